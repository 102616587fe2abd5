#include "plan/fly.hpp"

#include <fmt/format.h>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/flight/daylight.hpp"
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

/// What the ways and the reserve leave of a unit's endurance, or what the planner states.
Duration fuel_on_scene(const Assignment& assignment) {
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

/// How long there is light after arriving at a place: to sunset; none when the sun does not set.
std::optional<Duration> light_left(Position place, TimePoint depart, Duration way_out) {
  const TimePoint arrival = depart + std::chrono::round<std::chrono::seconds>(way_out);
  const flight::SunTimes sun = flight::daylight(place, flight::local_date(place, arrival)).sun;
  if (sun.state == flight::SunState::above) return std::nullopt;
  if (sun.state == flight::SunState::below) {
    throw Error(ErrorCode::impossible, "the sun does not rise in the area that day",
                "write \"searches_at_night\": true for a unit that searches without daylight");
  }
  if (!sun.set || *sun.set <= arrival) {
    throw Error(ErrorCode::impossible, "the unit arrives in the area after sunset",
                "let it leave earlier, or write \"searches_at_night\": true");
  }
  return *sun.set - arrival;
}

void set_search_time(const flight::FlyOptions& options, Position place, Assignment& assignment) {
  assignment.on_scene_endurance = fuel_on_scene(assignment);
  if (!assignment.unit.searches_at_night) {
    const auto light = light_left(place, options.depart, assignment.way_out.time);
    if (light && *light < assignment.on_scene_endurance) assignment.on_scene_endurance = *light;
  }
  assignment.search_time = sweep::search_endurance(assignment.on_scene_endurance);
}

/// The search height above the ground in the middle of the search, where that is known: heights
/// above sea level are planned later, for the pattern as flown.
Length height_of_wind(const Mission& mission, const SearchUnit& unit) {
  const Length above_ground = unit.search_height.value_or(Length());
  if (!mission.elevation) return above_ground;
  const Position place = mission.area.polygons.empty() ? unit.base.position : middle(mission.area);
  return above_ground + terrain::height(mission.elevation->model, place).value_or(Length());
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
  options.height = unit.search_altitude.value_or(height_of_wind(mission, unit));
  return options;
}

void guess_time_on_scene(const Mission& mission, Position place, Assignment& assignment) {
  const SearchUnit& unit = assignment.unit;
  const flight::FlyOptions options = fly_options(mission, unit);
  const flight::Velocity air =
      wind_field(mission.conditions, unit).at(options.height, options.depart);
  assignment.way_out = way(unit, air, unit.base.position, place);
  assignment.way_back = way(unit, air, place, unit.base.position);
  set_search_time(options, place, assignment);
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
  const Position start = pattern::commence_search_point(assignment.pattern);
  assignment.light = flight::search_light(assignment.flown, start);
  set_search_time(options, start, assignment);
  if (unit.time_away) {
    assignment.endurance_use =
        flight::endurance_use(assignment.flown, craft, wind, options,
                              {unit.time_away->endurance, unit.time_away->reserve});
  }
}

}  // namespace sweepwright::plan
