// Position: a place on the WGS 84 ellipsoid.
//
// Conventions: latitude first, north positive; longitude east positive, kept in [-180, 180).
// Domain: latitude -90 to 90; any finite longitude. Both poles and the antimeridian are ordinary
//   places. At a pole the longitude is kept as given.
// Promises: P1 no Position outside the domain exists; P2 180 E and 180 W are the same value.
#pragma once

#include <compare>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright {

class Position {
 public:
  /// Where the equator meets the Greenwich meridian.
  constexpr Position() = default;

  /// Throws Error(value) for a latitude outside -90..90 or a value that is not finite.
  static Position at(Angle latitude, Angle longitude);

  constexpr Angle latitude() const { return latitude_; }
  constexpr Angle longitude() const { return longitude_; }
  constexpr auto operator<=>(const Position&) const = default;

 private:
  constexpr Position(Angle latitude, Angle longitude)
      : latitude_(latitude), longitude_(longitude) {}
  Angle latitude_;
  Angle longitude_;
};

}  // namespace sweepwright
