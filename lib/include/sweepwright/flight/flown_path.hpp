// The path over the ground that a flown pattern makes, turns included, for overlays and pictures.
//
// Conventions: straight parts are geodesics from their first place to their last (relative to a
//   drifting object they have places between as well); turns have a place for each kArcStep of
//   heading. Times count from departure.
// Accuracy: a turn's chord leaves it by under 0.4 % of the radius; where a turn meets the next
//   leg, the path is out by less than 3 m for joints of 3 NM (flown_path_test.cpp).
// Promises: P1 each leg's path begins where the last one ended, as accurate as above; P2 less the
//   drift since arrival, the straight parts lie on the pattern's legs.
// Source: turn.hpp, join.hpp.
#pragma once

#include <vector>

#include "sweepwright/flight/flown_pattern.hpp"

namespace sweepwright::flight {

inline constexpr Angle kArcStep = Angle::degrees(10);

struct PathPoint {
  Position position;
  Duration time{};
};

struct FlownLegPath {
  std::vector<PathPoint> straight;  ///< at least two
  std::vector<PathPoint> turn;      ///< from the straight part's end on; empty without a turn
};

/// One for each leg of the flown pattern.
std::vector<FlownLegPath> flown_paths(const FlownPattern& flown);

/// The places alone, in a row.
Path places(const std::vector<PathPoint>& points);
Path whole_path(const FlownPattern& flown);

}  // namespace sweepwright::flight
