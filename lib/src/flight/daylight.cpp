#include "sweepwright/flight/daylight.hpp"

#include <algorithm>
#include <cmath>

namespace sweepwright::flight {
namespace {

using std::chrono::seconds;

constexpr seconds kHalfDay = std::chrono::hours(12);
/// From noon to noon it is not quite 24 hours: polar days are joined over the seam.
constexpr seconds kSeam = std::chrono::minutes(1);

/// Local mean time less UTC.
seconds mean_time_offset(Position place) {
  return seconds(std::llround(place.longitude().degrees() / 360 * 86400));
}

TimePoint noon_of(Position place, std::chrono::year_month_day date) {
  TimePoint noon = std::chrono::sys_days(date) + kHalfDay - mean_time_offset(place);
  for (int i = 0; i < 3; ++i) {
    noon -= seconds(std::llround(hour_angle(place, noon).degrees() * 240));
  }
  return noon;
}

/// When the sun passes the elevation between two times, to the second; it must do so once.
TimePoint crossing(Position place, TimePoint low, TimePoint high, Angle elevation) {
  const bool rising = sun_position(place, low).elevation < elevation;
  while (high - low > seconds(1)) {
    const TimePoint middle = low + (high - low) / 2;
    const bool below = sun_position(place, middle).elevation < elevation;
    (below == rising ? low : high) = middle;
  }
  return low;
}

SunTimes sun_times_about(Position place, TimePoint noon, Angle elevation) {
  const auto above = [&](TimePoint time) {
    return sun_position(place, time).elevation >= elevation;
  };
  SunTimes times;
  if (!above(noon)) {
    times.state = SunState::below;
    return times;
  }
  if (!above(noon - kHalfDay)) times.rise = crossing(place, noon - kHalfDay, noon, elevation);
  if (!above(noon + kHalfDay)) times.set = crossing(place, noon, noon + kHalfDay, elevation);
  if (!times.rise && !times.set) times.state = SunState::above;
  return times;
}

}  // namespace

std::chrono::year_month_day local_date(Position place, TimePoint time) {
  return std::chrono::floor<std::chrono::days>(time + mean_time_offset(place));
}

SunTimes sun_times(Position place, std::chrono::year_month_day date, Angle elevation) {
  return sun_times_about(place, noon_of(place, date), elevation);
}

Daylight daylight(Position place, std::chrono::year_month_day date) {
  const TimePoint noon = noon_of(place, date);
  return {noon, sun_times_about(place, noon, kSunriseElevation),
          sun_times_about(place, noon, kCivilTwilightElevation)};
}

Duration time_in_light(Position place, TimePoint from, TimePoint to, Angle elevation) {
  Duration sum{};
  TimePoint counted = from;  // so that no second is counted twice
  const std::chrono::days day(1);
  for (auto date = std::chrono::sys_days(local_date(place, from)) - day;
       date <= std::chrono::sys_days(local_date(place, to)) + day; date += day) {
    const TimePoint noon = noon_of(place, date);
    const SunTimes times = sun_times_about(place, noon, elevation);
    if (times.state == SunState::below) continue;
    const TimePoint begin = std::max(counted, times.rise.value_or(noon - kHalfDay - kSeam));
    const TimePoint end = std::min(to, times.set.value_or(noon + kHalfDay));
    if (end <= begin) continue;
    sum += end - begin;
    counted = end;
  }
  return sum;
}

}  // namespace sweepwright::flight
