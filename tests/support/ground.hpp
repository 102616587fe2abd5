// Places and simple areas for tests.
#pragma once

#include "sweepwright/position/region.hpp"

namespace sweepwright::test {

inline Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

/// A rectangle with geodesic sides: `along` long in direction `axis`, `across` wide, its middle at
/// `centre`.
inline Region rectangle(Position centre, TrueDirection axis, Length along, Length across) {
  const auto corner = [&](double up, double right) {
    const Arrival side = travel(centre, axis, along * up);
    return travel(side.position, side.track + Angle::degrees(90), across * right).position;
  };
  return make_region(
      {{{corner(-0.5, -0.5), corner(-0.5, 0.5), corner(0.5, 0.5), corner(0.5, -0.5)}, {}}});
}

/// The same rectangles wherever the Earth is awkward.
inline std::vector<Position> awkward_places() {
  return {at(38.25, -117.0), at(0, 0), at(-17.5, 179.9), at(78.2, 16), at(-89.9, 30), at(60, -180)};
}

}  // namespace sweepwright::test
