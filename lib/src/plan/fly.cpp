#include "plan/fly.hpp"

#include <fmt/format.h>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::plan {
namespace {

bool flies(const SearchUnit& unit) {
  return unit.platform == sweep::Platform::fixed_wing ||
         unit.platform == sweep::Platform::helicopter;
}

/// A way from a base or to it, in the wind at its start.
Transit way(const SearchUnit& unit, const flight::Velocity& air, Position from, Position to) {
  const GeodesicLine line = geodesic(from, to);
  const Speed speed = unit.transit_speed.value_or(unit.search_speed);
  if (line.length.metres() == 0) return {line, Duration(), std::nullopt};
  const flight::WindTriangle triangle =
      flight::triangle_for_track(line.start_track, speed, flight::to_wind(air));
  return {line, line.length / triangle.ground_speed, triangle};
}

/// Why the magnetic model says nothing about the flight; empty when it does.
std::string no_magnetic_headings(const flight::FlyOptions& options) {
  try {
    magnetic::variation(options.base.value(), options.depart);
    return {};
  } catch (const Error& error) {
    return fmt::format("no magnetic headings: {}", error.message());
  }
}

/// A leg to or from the base, as flown.
Transit way(const flight::FlownLeg& leg) {
  return {leg.leg.line, leg.end - leg.start, leg.triangle};
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
        "give the unit a nearer base or more endurance, or leave it out");
  }
  return left;
}

void set_search_time(Assignment& assignment) {
  assignment.on_scene_endurance = on_scene_endurance(assignment);
  assignment.search_time = sweep::search_endurance(assignment.on_scene_endurance);
}

}  // namespace

flight::Aircraft aircraft(const SearchUnit& unit) {
  return {unit.search_speed, unit.transit_speed, unit.turning, unit.fuel_flow};
}

flight::WindField wind_field(const Conditions& conditions, const SearchUnit& unit) {
  if (!flies(unit)) return {};
  if (!conditions.winds_aloft.empty()) return flight::WindField(conditions.winds_aloft);
  if (!conditions.wind_from || !conditions.wind_speed) return {};
  return flight::WindField::uniform({*conditions.wind_from, *conditions.wind_speed});
}

flight::FlyOptions fly_options(const Mission& mission, const SearchUnit& unit) {
  flight::FlyOptions options;
  options.depart = unit.depart.value_or(mission.incident.operational_period.from);
  options.base = unit.base.position;
  options.height = unit.search_altitude.value_or(unit.search_height.value_or(Length()));
  return options;
}

void guess_time_on_scene(const Mission& mission, Position place, Assignment& assignment) {
  const SearchUnit& unit = assignment.unit;
  const flight::FlyOptions options = fly_options(mission, unit);
  const flight::Velocity air =
      wind_field(mission.conditions, unit).at(options.height, options.depart);
  assignment.way_out = way(unit, air, unit.base.position, place);
  assignment.way_back = way(unit, air, place, unit.base.position);
  set_search_time(assignment);
}

void fly_pattern(const Mission& mission, Assignment& assignment) {
  const SearchUnit& unit = assignment.unit;
  const flight::Aircraft craft = aircraft(unit);
  const flight::WindField wind = wind_field(mission.conditions, unit);
  flight::FlyOptions options = fly_options(mission, unit);
  const std::string no_headings = no_magnetic_headings(options);
  options.magnetic_headings = no_headings.empty();
  assignment.flown = flight::fly(assignment.pattern, craft, wind, options);
  if (!no_headings.empty()) assignment.flown.remarks.push_back(no_headings);
  assignment.way_out = way(assignment.flown.legs.front());
  assignment.way_back = way(assignment.flown.legs.back());
  assignment.pattern_time = assignment.flown.search_end - assignment.flown.arrival;
  set_search_time(assignment);
  if (unit.time_away) {
    assignment.endurance_use =
        flight::endurance_use(assignment.flown, craft, wind, options,
                              {unit.time_away->endurance, unit.time_away->reserve});
  }
}

}  // namespace sweepwright::plan
