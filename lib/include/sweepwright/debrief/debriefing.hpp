// Debriefing: what all sorties together found or would have found, and what to believe now.
//
// Problem: planned coverage is hope, flown tracks are fact. From the tracks follows, place by
//   place, the chance that the object would have been seen had it been there; from that the belief
//   after a search in vain, and where the next hours are worth most.
// Method:
//   1. Each sortie's stretches (sortie.hpp) go onto one raster round all sectors
//   (coverage_map.hpp).
//      By the inverse cube law the probability of detection of a raster cell is that of the whole
//      track past it; by definite range the share swept; by the exponential law 1 - exp(-C), with C
//      the coverage in a square round the cell, as wide as the sweep or the planned track spacing,
//      whichever is more.
//   2. Sorties are taken as independent: a cell's chance of being missed is the product of theirs.
//   3. The probability of detection of a sector or of a grid cell is the mean over its ground;
//      ground beyond the raster was not searched.
//   4. Bayes' rule over the cells of the mission's belief (belief/update.hpp), evenly likely all
//      over each cell. A mission without one is taken to believe evenly in its area, cells on its
//      edge for their part in it, and `even_belief` says so.
//   5. A sortie's share is what it adds to the probability of success after those before it, in
//      order of time on scene.
//   6. The proposal spreads the plan's effort once more where it is worth most now
//      (effort/optimal.hpp).
// Domain: 1 to kMostSorties sorties; a raster of at most kMostRasterCells cells (cells grow to
// fit). Accuracy: that of coverage_map.hpp; a region's mean is taken over raster cells whose middle
// lies
//   in it: cells are a tenth of the narrowest sweep width unless the raster grows too large.
// Promises: P1 probabilities of the belief after, and outside, sum to 1 within 1e-9; P2 the shares
//   add up to the probability of success; P3 the order in which sorties are given does not matter
//   but for rounding; P4 a sortie that counts nothing changes nothing (debriefing_test.cpp).
// Source: as coverage_map.hpp and update.hpp; probability of success POS = POC x POD, cumulative
//   POS: IAMSAR Manual Volume II, chapter 4 [from memory].
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "sweepwright/belief/belief.hpp"
#include "sweepwright/debrief/against_plan.hpp"
#include "sweepwright/debrief/coverage_frame.hpp"
#include "sweepwright/debrief/holes.hpp"
#include "sweepwright/debrief/sortie.hpp"
#include "sweepwright/effort/optimal.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::debrief {

inline constexpr std::size_t kMostSorties = 1000;
inline constexpr std::size_t kMostRasterCells = 2'000'000;

struct DebriefOptions {
  std::optional<sweep::DetectionLaw> law;  ///< the mission's when not given
  std::optional<Length> cell;              ///< side of raster cells
  unsigned threads = 1;
};

/// One crew's sector, as planned and as flown.
struct SortieResult {
  Sortie sortie;
  AgainstPlan against;
  sweep::Coverage coverage;  ///< effort within the sector / its ground
  sweep::Probability pod;    ///< mean over its sector, by this sortie alone
  sweep::Probability planned_pod;
  double success_share = 0;  ///< what it adds to the probability of success
};

/// A sector after all sorties.
struct SectorResult {
  std::size_t assignment = 0;
  sweep::Probability planned_pod;
  sweep::Probability pod;         ///< by all sorties that reached it
  double containment_before = 0;  ///< that the object is in it
  double containment_after = 0;
};

struct Debriefing {
  std::vector<SortieResult> sorties;  ///< in order of time on scene; without times as given, last
  std::vector<SectorResult> sectors;  ///< in the order of the plan
  sweep::DetectionLaw law = sweep::DetectionLaw::exponential;
  CoverageFrame frame{LocalPlane(Position()), {}, {}, 0, 0};
  std::vector<float> raster_pod;  ///< one for each cell of the frame, by all sorties
  bool even_belief = false;       ///< the mission has none: even over its area
  std::vector<double> cell_pod;   ///< one for each cell of the belief, by all sorties
  belief::Belief before;
  belief::Belief after;
  double success = 0;  ///< of these sorties together
  /// The plan's effort spread over the belief after; none when nothing is left to find.
  std::optional<effort::Allocation> next;
  std::vector<std::string> remarks;
};

/// Throws Error(value) for no sorties or too many of them, and Error(impossible) when they were
/// sure to find the object.
Debriefing make_debriefing(const plan::Plan& plan, std::vector<Sortie> sorties,
                           const DebriefOptions& options = {});

/// What counts as a hole in a sector.
struct HoleLimit {
  sweep::Probability wanted;  ///< ground under it
  std::optional<Area>
      least;  ///< smaller ones are left out; kLeastHole of the sector when not given
};
inline constexpr double kLeastHole = 0.01;

/// The holes of each sector after all sorties, largest first.
std::vector<std::vector<Hole>> sector_holes(const plan::Plan& plan, const Debriefing& found,
                                            const HoleLimit& limit);

}  // namespace sweepwright::debrief
