#include "sweepwright/effort/available.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::effort {
namespace {

std::string place(const std::string& callsign) {
  return fmt::format("unit {}", callsign);
}

void require_time(Duration time, std::string_view what) {
  if (time.count() >= 0 && std::isfinite(time.count())) return;
  throw Error(ErrorCode::value,
              fmt::format("the {} is {} s, expected 0 or more", what, time.count()));
}

}  // namespace

Duration transit_time(Length distance, Speed ground_speed) {
  if (!(distance >= Length()) || !std::isfinite(distance.metres())) {
    throw Error(ErrorCode::value, fmt::format("the distance of the way is {} m, expected 0 or more",
                                              distance.metres()));
  }
  if (!(ground_speed > Speed()) || !std::isfinite(ground_speed.metres_per_second())) {
    throw Error(
        ErrorCode::value,
        fmt::format("the ground speed is {} kt, expected more than 0", ground_speed.knots()),
        "the wind leaves no headway: take a faster unit, or another base");
  }
  return distance / ground_speed;
}

Duration on_scene_endurance(const TimeAway& away) {
  require_time(away.endurance, "endurance");
  require_time(away.way_out, "time of the way out");
  require_time(away.way_back, "time of the way back");
  require_time(away.reserve, "reserve");
  const Duration left = away.endurance - away.way_out - away.way_back - away.reserve;
  if (left.count() > 0) return left;
  throw Error(
      ErrorCode::impossible,
      fmt::format("the endurance of {} leaves no time to search: the way out takes {}, "
                  "the way back {}, and the reserve is {}",
                  format_duration_minutes(away.endurance), format_duration_minutes(away.way_out),
                  format_duration_minutes(away.way_back), format_duration_minutes(away.reserve)),
      "give the unit a nearer base or more endurance, or leave it out");
}

Unit make_unit(std::string callsign, Length sweep_width, Speed search_speed, const TimeAway& away) {
  try {
    const Duration search_time = sweep::search_endurance(on_scene_endurance(away));
    return {std::move(callsign), sweep_width, search_speed, search_time, away};
  } catch (const Error& error) {
    throw error.at(place(callsign));
  }
}

Area swept_per_hour(const Unit& unit) {
  return unit.sweep_width * (unit.search_speed * std::chrono::hours(1));
}

Area search_effort(const Unit& unit) {
  try {
    const Area effort = sweep::search_effort(unit.sweep_width, unit.search_speed, unit.search_time);
    if (effort > Area()) return effort;
    throw Error(ErrorCode::value, "the search time is 0, expected more",
                "give the hours that the unit can search, or leave it out");
  } catch (const Error& error) {
    throw error.at(place(unit.callsign));
  }
}

Area total_effort(std::span<const Unit> units) {
  if (units.empty()) {
    throw Error(ErrorCode::value, "there are no units to search with", "name one at least");
  }
  Area total;
  for (const Unit& unit : units) total += search_effort(unit);
  return total;
}

std::vector<Unit> with_hours_for(std::span<const Unit> units, Area effort) {
  const double factor = effort / total_effort(units);
  std::vector<Unit> stretched(units.begin(), units.end());
  for (Unit& unit : stretched) {
    unit.search_time *= factor;
    unit.time_away.reset();  // it no longer says where the search time is from
  }
  return stretched;
}

}  // namespace sweepwright::effort
