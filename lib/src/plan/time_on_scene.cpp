#include "plan/time_on_scene.hpp"

#include <fmt/format.h>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::plan {
namespace {

Transit transit(const SearchUnit& unit, Position from, Position to) {
  const GeodesicLine line = geodesic(from, to);
  return {line, line.length / unit.transit_speed.value_or(unit.search_speed)};
}

Duration on_scene_endurance(const Assignment& assignment) {
  const SearchUnit& unit = assignment.unit;
  if (unit.on_scene_endurance) return *unit.on_scene_endurance;
  const TimeAway& away = unit.time_away.value();
  const Duration left =
      away.endurance - away.reserve - assignment.way_out.time - assignment.way_back.time;
  if (left.count() <= 0) {
    throw Error(
        ErrorCode::impossible,
        fmt::format("the endurance of {} leaves no time in sector {}: the way out takes {}, "
                    "the way back {}, and the reserve is {}",
                    format_duration_minutes(away.endurance), assignment.sector_name,
                    format_duration_minutes(assignment.way_out.time),
                    format_duration_minutes(assignment.way_back.time),
                    format_duration_minutes(away.reserve)),
        "give the unit a nearer base or more endurance, or leave it out",
        fmt::format("unit {}", unit.callsign));
  }
  return left;
}

}  // namespace

void set_time_on_scene(Assignment& assignment, Position arrive, Position leave) {
  const Position base = assignment.unit.base.position;
  assignment.way_out = transit(assignment.unit, base, arrive);
  assignment.way_back = transit(assignment.unit, leave, base);
  assignment.on_scene_endurance = on_scene_endurance(assignment);
  assignment.search_time = sweep::search_endurance(assignment.on_scene_endurance);
}

}  // namespace sweepwright::plan
