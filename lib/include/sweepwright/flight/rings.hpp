// Rings: the places at one distance, or at one time of flight, from a position.
//
// Problem: how far can a crew be by now, or what ground can it reach in twenty minutes? In the
//   wind the places reached in one time are a circle too, carried downwind.
// Conventions: a ring is closed: its last place is its first. Crews hold one heading for the
//   whole time, in steady wind.
// Domain: distances above 0 and up to kFarthestRing; times above 0.
// Accuracy: the places are at the distance to 1e-6 m; between them the ring is a chord, 1.5e-4 of
//   the radius inside (rings_test.cpp). A crew that holds its heading by compass for an hour at
//   120 kt in 30 kt of wind at 60 degrees is within 1 % of it.
// Source: vector sum of wind and airspeed; own derivation.
#pragma once

#include "sweepwright/flight/wind.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::flight {

inline constexpr Length kFarthestRing = Length::kilometres(5000);

struct RangeRing {
  Position centre;
  Length radius;
  Path line;  ///< closed
};

/// Throws Error(value) for a radius outside the domain.
RangeRing distance_ring(Position centre, Length radius);

/// The places that a crew can be at after a time: round the place that the wind alone would carry
/// it to. For a crew on the ground, calm and its speed. Throws Error(value).
RangeRing time_ring(Position from, Duration time, Speed true_airspeed, const Wind& wind = {});

}  // namespace sweepwright::flight
