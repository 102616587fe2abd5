// Wind and Drift: how the air moves over the ground, and how a search object moves over it.
//
// Problem: wind is told by where it comes from, drift and current by where they go. Mixing the
//   two is a mistake of 180 degrees, so they are two types.
// Conventions: true north. Speeds are not negative; a speed of 0 is calm, whatever its direction.
// Source: wind direction is that from which it blows [WMO-No. 8, part I, ch. 5, from memory];
//   drift and set are told by where they go [IAMSAR Manual Vol II, ch. 4, from memory].
#pragma once

#include "sweepwright/flight/velocity.hpp"

namespace sweepwright::flight {

struct Wind {
  TrueDirection from;
  Speed speed;
  bool operator==(const Wind&) const = default;
};

/// The air's motion over the ground.
inline Velocity velocity(const Wind& wind) {
  return make_velocity(wind.from.reversed(), wind.speed);
}

/// The wind that moves the air so.
inline Wind to_wind(Velocity air) {
  return {direction(air).reversed(), speed(air)};
}

struct Drift {
  TrueDirection towards;
  Speed speed;
  bool operator==(const Drift&) const = default;
};

inline Velocity velocity(const Drift& drift) {
  return make_velocity(drift.towards, drift.speed);
}

}  // namespace sweepwright::flight
