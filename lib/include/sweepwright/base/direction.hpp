// Directions that know their north: TrueDirection and MagneticDirection are different types.
//
// Conventions: clockwise from north, kept in [0, 360) degrees. Adding an Angle turns clockwise.
//   One becomes the other only where the magnetic variation is handed in.
#pragma once

#include <cmath>
#include <compare>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright {

/// The angle brought into [0, 360) degrees.
inline Angle normalized_360(Angle angle) {
  const double turned = std::fmod(angle.degrees(), 360.0);
  const double positive = turned < 0 ? turned + 360.0 : turned;
  // Adding 0 turns -0 into 0.
  return Angle::degrees(positive >= 360.0 ? 0.0 : positive + 0.0);
}

/// The angle brought into [-180, 180) degrees.
inline Angle normalized_180(Angle angle) {
  // A value already in range stays as it is, to the last bit.
  if (angle.degrees() >= -180.0 && angle.degrees() < 180.0) return angle;
  const Angle turned = normalized_360(angle);
  return turned.degrees() >= 180.0 ? turned - Angle::degrees(360) : turned;
}

/// A direction from north `North`, clockwise, in [0, 360) degrees.
template <typename North>
class Direction {
 public:
  constexpr Direction() = default;
  static Direction degrees(double value) { return Direction(Angle::degrees(value)); }
  explicit Direction(Angle angle) : angle_(normalized_360(angle)) {}
  constexpr double degrees() const { return angle_.degrees(); }
  constexpr Angle angle() const { return angle_; }
  constexpr auto operator<=>(const Direction&) const = default;
  friend Direction operator+(Direction d, Angle clockwise) {
    return Direction(d.angle_ + clockwise);
  }
  friend Direction operator-(Direction d, Angle clockwise) {
    return Direction(d.angle_ - clockwise);
  }
  /// The turn from `from` to `to`, in [-180, 180): positive is clockwise (right).
  friend Angle turn_between(Direction from, Direction to) {
    return normalized_180(to.angle_ - from.angle_);
  }
  Direction reversed() const { return *this + Angle::degrees(180); }

 private:
  Angle angle_;
};

struct TrueNorth;
struct MagneticNorth;
using TrueDirection = Direction<TrueNorth>;
using MagneticDirection = Direction<MagneticNorth>;

}  // namespace sweepwright
