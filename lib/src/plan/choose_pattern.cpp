#include "plan/choose_pattern.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <limits>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/pattern/creeping_line.hpp"
#include "sweepwright/pattern/expanding_square.hpp"
#include "sweepwright/pattern/parallel_track.hpp"
#include "sweepwright/position/plane_region.hpp"
#include "sweepwright/sector/divide.hpp"

namespace sweepwright::plan {
namespace {

Length distance_from_base(const Assignment& assignment, const pattern::Pattern& pattern) {
  return geodesic(assignment.unit.base.position, pattern::commence_search_point(pattern)).length;
}

pattern::Pattern ladder(pattern::Kind kind, const Region& sector,
                        const pattern::RegionPatternOptions& options) {
  return kind == pattern::Kind::creeping ? pattern::make_creeping_line(sector, options)
                                         : pattern::make_parallel_track(sector, options);
}

/// Of the four ways round a sector, the one that commences nearest to the base.
pattern::Pattern nearest_ladder(pattern::Kind kind, const Assignment& assignment,
                                TrueDirection along) {
  pattern::Pattern best;
  Length best_distance = Length::metres(std::numeric_limits<double>::max());
  for (const TrueDirection track : std::array{along, along.reversed()}) {
    for (const pattern::Turn turn : {pattern::Turn::right, pattern::Turn::left}) {
      pattern::Pattern candidate = ladder(kind, assignment.sector,
                                          {.spacing = assignment.spacing,
                                           .first_track = track,
                                           .first_turn = turn,
                                           .gaps = pattern::Gaps::even});
      const Length distance = distance_from_base(assignment, candidate);
      // A clear gain only: equal corners must not depend on the last digit.
      if (distance < best_distance - Length::metres(1)) {
        best_distance = distance;
        best = std::move(candidate);
      }
    }
  }
  return best;
}

/// As many legs of an expanding square as stay in reach: inside the sector's narrower half-width,
/// and within the search time.
int square_legs(const Assignment& assignment, Position datum) {
  const PlaneRegion ground =
      to_plane(assignment.sector, LocalPlane(datum, sector::long_side(assignment.sector)));
  const Span right = extent_right(ground);
  const Span up = extent_up(ground);
  const Length room = std::min({-right.low, right.high, -up.low, up.high});
  const Length reach = assignment.unit.search_speed * assignment.search_time;
  int legs = 1;
  // After n legs the square reaches (n + 1) / 4 spacings from the datum, and is searched half a
  // spacing further.
  while (legs < 1000 && assignment.spacing * ((legs + 2) / 4.0 + 0.5) <= room &&
         pattern::expanding_square_distance(legs + 1, assignment.spacing) <= reach) {
    ++legs;
  }
  return legs;
}

ChosenPattern expanding_square(const Mission& mission, const Assignment& assignment) {
  const bool has_datum = mission.datum && contains(assignment.sector, mission.datum->position);
  const Position datum = has_datum ? mission.datum->position : middle(assignment.sector);
  const Conditions& conditions = mission.conditions;
  const TrueDirection first =
      mission.leg_direction.value_or(conditions.wind_from.value_or(TrueDirection()));
  const int legs = square_legs(assignment, datum);
  const std::string_view track_reason = mission.leg_direction
                                            ? "in the direction that the planner asked for"
                                        : conditions.wind_from ? "into the wind"
                                                               : "north, for want of a wind";
  return {pattern::make_expanding_square(
              {datum, first, assignment.spacing, legs, pattern::Turn::right}),
          fmt::format("expanding square, chosen by the planner, from {}; first leg {}",
                      has_datum ? "the datum" : "the middle of the sector", track_reason)};
}

}  // namespace

ChosenPattern choose_pattern(const Mission& mission, const Assignment& assignment) {
  if (assignment.unit.pattern == PatternChoice::square)
    return expanding_square(mission, assignment);

  const bool creeping = assignment.unit.pattern == PatternChoice::creeping;
  const pattern::Kind kind = creeping ? pattern::Kind::creeping : pattern::Kind::parallel;
  const TrueDirection long_side = sector::long_side(assignment.sector);
  const TrueDirection along =
      mission.leg_direction.value_or(creeping ? long_side + Angle::degrees(90) : long_side);
  const std::string_view side = mission.leg_direction
                                    ? "in the direction that the planner asked for"
                                : creeping ? "along the short side of the sector"
                                           : "along the long side of the sector";
  const std::string_view chosen_by = assignment.unit.pattern == PatternChoice::automatic
                                         ? "fewest turns"
                                         : "chosen by the planner";
  return {nearest_ladder(kind, assignment, along),
          fmt::format("{}, {}: legs {}, commencing at the corner nearest to {}",
                      creeping ? "creeping line" : "parallel track", chosen_by, side,
                      assignment.unit.base.name)};
}

}  // namespace sweepwright::plan
