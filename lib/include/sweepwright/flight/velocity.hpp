// Velocity: a motion over the ground as its parts towards east and north, so that motions add up.
//
// Conventions: parts along the local parallel and meridian of the place meant. A motion of no
//   speed has no direction: north is given for it.
// Domain: any finite parts. At a pole, north is along the meridian of the position's longitude.
// Accuracy: a few units in the last place (wind_triangle_test.cpp).
// Source: plane trigonometry.
#pragma once

#include "sweepwright/base/direction.hpp"
#include "sweepwright/base/quantity.hpp"

namespace sweepwright::flight {

struct Velocity {
  Speed east;
  Speed north;
  friend constexpr Velocity operator+(Velocity a, Velocity b) {
    return {a.east + b.east, a.north + b.north};
  }
  friend constexpr Velocity operator-(Velocity a, Velocity b) {
    return {a.east - b.east, a.north - b.north};
  }
  bool operator==(const Velocity&) const = default;
};

Velocity make_velocity(TrueDirection towards, Speed speed);
Speed speed(Velocity velocity);
TrueDirection direction(Velocity velocity);

}  // namespace sweepwright::flight
