// Where tracks lie: thinned out for pictures, and a rectangle round them.
//
// Conventions: as swept_piece.hpp: a piece that begins where the last one ended goes on with its
//   track.
// Domain: area_round(): tracks within kLocalPlaneReach of their middle.
// Promises: P1 no place of a track lies further than the step from a place that is kept; P2 all
//   places lie in the rectangle, its edges the margin away (coverage_figures_test.cpp).
// Source: own work.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/debrief/swept_piece.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::debrief {

/// Leaves out places nearer than `step` to the last one that was kept; keeps the ends.
class ThinnedTracks {
 public:
  explicit ThinnedTracks(Length step) : step_(step) {}
  void add(const SweptPiece& piece);
  /// All that was added; one path for each track.
  std::vector<Path> paths();

 private:
  void end_path();

  Length step_;
  std::vector<Path> paths_;
  std::optional<Position> last_;
};

/// A rectangle round the tracks, `margin` beyond them, north up in its middle. Throws
/// Error(geometry) when nothing was flown, or too far apart.
Region area_round(const std::vector<Path>& tracks, Length margin);

}  // namespace sweepwright::debrief
