// CoverageMap: what the tracks as flown did for every cell of a raster.
//
// Problem: planned coverage is hope, flown tracks are fact. For each place: how often did a crew
//   sweep it, how close did it come, and how likely would it have seen the object there?
// Conventions:
//   pass: the middle of a cell comes into the sweep, within half a sweep width of the track. It is
//     one pass until it has left the sweep again, however many pieces the track has there. Pieces
//     that follow each other are one track where each begins where the last one ended.
//   nearest: lateral distance of the closest pass, known within one sweep width of a track.
//   swept share: of the cell's ground, within half a sweep width of a track; overlaps count once.
//   effort: length of track in the cell x sweep width; coverage: effort / area. On cells smaller
//     than the sweep width it is spiky: take it from regions.
//   potential F: under the inverse cube law a crew at height h and speed v finds at the rate
//     k h / r^3 at distance r, so F = (W^2 / 8 pi) x (integral of ds / r^3 along the track), W
//     standing for k, h and v: W = 2 sqrt(2 pi k h / v). POD = 1 - exp(-F).
// Detection by law, cell by cell (pod()):
//     inverse cube    1 - exp(-F) at the middle of the cell, over the whole track
//     definite range  the swept share
//     exponential     1 - exp(-effort / area): of areas wider than the sweep, not of small cells
// Domain: that of coverage_frame.hpp. Ground more than kCoverageTrackReach from the middle of the
//   area takes no part; pieces of 0 length or sweep width neither.
// Accuracy: on the plane, passes and nearest follow the track to a fiftieth of a cell
//   (coverage_map_test.cpp); effort 1e-9; swept share of an area 0.1 %, against GEOS, and POD 1e-4
//   against the sum over all pieces (detection_integral_test.cpp).
// Promises: P1 the same pieces in the same order give the same bits, whatever the number of
//   threads; P2 the order of tracks changes nothing but the last digits of sums; P3 cutting a piece
//   in two changes no more than that (coverage_map_test.cpp). Memory does not grow with the number
//   of pieces: they are worked on some thousands at a time.
// Source: B. O. Koopman, Search and Screening, OEG Report 56 (1946), reissued 1980, chapter 2 (the
//   inverse cube law, W and p(x)) and chapter 3 (random search) [from memory]; the integral along a
//   straight piece is worked out in docs/methods/coverage.md.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "sweepwright/debrief/coverage_frame.hpp"
#include "sweepwright/debrief/swept_piece.hpp"
#include "sweepwright/sweep/detection.hpp"

namespace sweepwright::debrief {

/// An endless pass this far off still adds less than 1e-4 to the potential at a sweep width of
/// 18 km.
inline constexpr Length kCoverageTrackReach = Length::kilometres(800);

struct CoverageMap {
  CoverageFrame frame;
  // One for each cell.
  std::vector<std::uint32_t> passes;
  std::vector<float> nearest_m;  ///< infinite where no track came within its sweep width
  std::vector<float> swept_share;
  std::vector<double> effort_m2;
  std::vector<double> potential;  ///< of the inverse cube law
};

/// The chance that an object in the cell was found.
double pod(const CoverageMap& map, std::size_t cell, sweep::DetectionLaw law);

std::optional<Length> nearest(const CoverageMap& map, std::size_t cell);

/// What is worked out; the rest of the map stays empty.
struct CoverageParts {
  bool passes = true;  ///< and nearest
  bool swept = true;   ///< and effort
  bool detection = true;
};

/// A piece on the frame's plane.
struct PlanePiece {
  PlanePoint from;
  PlanePoint to;
  Length sweep_width;
};

/// Takes pieces one by one, works on them in batches.
class CoverageAccumulator {
 public:
  /// `threads`: 1 or more. Throws Error(value) for a frame that has no cells.
  explicit CoverageAccumulator(CoverageFrame frame, unsigned threads = 1, CoverageParts parts = {});
  ~CoverageAccumulator();
  CoverageAccumulator(const CoverageAccumulator&) = delete;
  CoverageAccumulator& operator=(const CoverageAccumulator&) = delete;

  /// Throws Error(value) for a sweep width below 0 or above kCoverageReach.
  void add(const SweptPiece& piece);
  void add(const PlanePiece& piece);
  /// All that has been added so far.
  CoverageMap map();

 private:
  class Batch;
  std::unique_ptr<Batch> batch_;
};

}  // namespace sweepwright::debrief
