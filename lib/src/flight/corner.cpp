#include "sweepwright/flight/corner.hpp"

#include <cmath>

namespace sweepwright::flight {

Arc arc_between(const WindTriangle& from, const WindTriangle& to) {
  const bool right = turn_between(from.track, to.track) >= Angle();
  const Angle turned = normalized_360(to.heading.angle() - from.heading.angle());
  return {from.heading, right ? turned : turned - Angle::degrees(360)};
}

std::optional<Corner> corner(const WindTriangle& from, const WindTriangle& to,
                             const TurningFlight& flight) {
  const double turn = std::abs(turn_between(from.track, to.track).degrees());
  if (turn < kNoTurn.degrees() || turn > kSharpestCorner.degrees()) return std::nullopt;
  const Arc arc = arc_between(from, to);
  // The way of the arc is lead_out along the first track and lead_in along the second.
  const Offset way = way_over_ground(arc, flight);
  const double a = from.track.angle().radians();
  const double b = to.track.angle().radians();
  const double crossing = std::sin(b - a);
  const Length lead_out = (way.north * std::sin(b) - way.east * std::cos(b)) / crossing;
  const Length lead_in = (way.east * std::cos(a) - way.north * std::sin(a)) / crossing;
  if (lead_out < Length() || lead_in < Length()) return std::nullopt;
  return Corner{arc, lead_out, lead_in};
}

}  // namespace sweepwright::flight
