// Pattern from waypoints: the legs that a planner drew, in the order given.
//
// Use: where the ground or local custom asks for a pattern that no rule makes (a shore, a trail, a
//   power line); it gets the same distances, times, overlays and sheets as the others.
// Conventions: all legs are search legs. No coverage is promised: the track spacing is the
//   planner's own statement, 0 when there is none. It has no designator.
// Domain: 2 places at least, at most kMostLegs legs; places repeated on the spot are dropped.
// Accuracy: as pattern.hpp.
// Source: own work.
#pragma once

#include <optional>

#include "sweepwright/pattern/pattern.hpp"

namespace sweepwright::pattern {

struct Waypoints {
  Path route;
  std::optional<Length> spacing = std::nullopt;  ///< above 0
};

/// Throws Error(value) for a bad spacing or too many legs, Error(geometry) when there is no leg.
Pattern make_waypoint_pattern(const Waypoints& request);

}  // namespace sweepwright::pattern
