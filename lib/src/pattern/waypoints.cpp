#include "sweepwright/pattern/waypoints.hpp"

#include <cmath>

#include "pattern/require.hpp"

namespace sweepwright::pattern {

Pattern make_waypoint_pattern(const Waypoints& request) {
  if (request.spacing) require_above_zero(*request.spacing, "track spacing");
  const Path route = without_repeats(request.route);
  if (route.size() < 2) {
    throw Error(ErrorCode::geometry, "the route has one place",
                "give two places at least, in the order in which they are passed");
  }
  require_leg_count(static_cast<int>(route.size() - 1));
  Pattern pattern{Kind::waypoints, request.spacing.value_or(Length()), Turn::right, {}, {}};
  for (std::size_t i = 1; i < route.size(); ++i) {
    pattern.legs.push_back(make_leg(LegKind::search, route[i - 1], route[i]));
  }
  // The side of the first turn, as it was drawn.
  for (std::size_t i = 1; i < pattern.legs.size(); ++i) {
    const Angle turn =
        turn_between(pattern.legs[i - 1].line.end_track, pattern.legs[i].line.start_track);
    if (std::abs(turn.degrees()) < 1) continue;
    pattern.first_turn = turn < Angle() ? Turn::left : Turn::right;
    break;
  }
  return pattern;
}

}  // namespace sweepwright::pattern
