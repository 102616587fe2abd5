// Offset: a short way over the ground as its parts towards east and north, so that ways add up.
//
// Conventions: parts along the parallel and meridian of the place it starts from.
// Domain: ways short enough to be laid on a plane: turns and the joints between neighbouring
//   legs.
// Accuracy: the joints of whole patterns, laid out so, close on the ground to 3 m
//   (flown_path_test.cpp).
// Source: plane trigonometry.
#pragma once

#include "sweepwright/flight/velocity.hpp"

namespace sweepwright::flight {

struct Offset {
  Length east;
  Length north;
  friend constexpr Offset operator+(Offset a, Offset b) {
    return {a.east + b.east, a.north + b.north};
  }
  friend constexpr Offset operator-(Offset a, Offset b) {
    return {a.east - b.east, a.north - b.north};
  }
  bool operator==(const Offset&) const = default;
};

Offset make_offset(TrueDirection towards, Length length);
constexpr Offset operator*(Velocity velocity, Duration time) {
  return {velocity.east * time, velocity.north * time};
}
Length length(Offset offset);
TrueDirection direction(Offset offset);

}  // namespace sweepwright::flight
