#include "sweepwright/sweep/search_effort.hpp"

#include <fmt/format.h>

#include <cmath>

#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

/// Refuses NaN and infinities too. `expected` says what would do.
void require(bool fine, double value, std::string_view what, std::string_view expected) {
  if (fine && std::isfinite(value)) return;
  throw Error(ErrorCode::value, fmt::format("the {} is {}, expected {}", what, value, expected));
}

}  // namespace

Duration search_endurance(Duration on_scene_endurance) {
  require(on_scene_endurance.count() >= 0, on_scene_endurance.count(),
          "on-scene endurance in seconds", "0 or more");
  return kSearchShareOfOnSceneEndurance * on_scene_endurance;
}

Duration on_scene_endurance_for(Duration search_time) {
  require(search_time.count() >= 0, search_time.count(), "search time in seconds", "0 or more");
  return search_time / kSearchShareOfOnSceneEndurance;
}

Area search_effort(Length sweep_width, Speed search_speed, Duration search_time) {
  require(sweep_width > Length(), sweep_width.metres(), "sweep width in metres", "more than 0");
  require(search_speed > Speed(), search_speed.metres_per_second(),
          "search speed in metres per second", "more than 0");
  require(search_time.count() >= 0, search_time.count(), "search time in seconds", "0 or more");
  return sweep_width * (search_speed * search_time);
}

Coverage coverage_of_effort(Area effort, Area searched) {
  require(searched > Area(), searched.square_metres(), "area in square metres", "more than 0");
  require(effort >= Area(), effort.square_metres(), "search effort in square metres", "0 or more");
  return Coverage(effort / searched);
}

Duration search_time_for(Coverage wanted, Area searched, const SweepRate& rate) {
  require(wanted > Coverage(), wanted.value(), "wanted coverage", "more than 0");
  require(searched > Area(), searched.square_metres(), "area in square metres", "more than 0");
  // The area that the unit sweeps in one hour; refuses its width and speed.
  const Area hourly = search_effort(rate.sweep_width, rate.search_speed, std::chrono::hours(1));
  return Duration(std::chrono::hours(1)) * (wanted.value() * (searched / hourly));
}

}  // namespace sweepwright::sweep
