#include "formats/day_bands.hpp"

#include <algorithm>

#include "sweepwright/flight/daylight.hpp"

namespace sweepwright::formats {
namespace {

void add(std::vector<plan::Period>& bands, const flight::SunTimes& times, TimePoint noon,
         const plan::Period& span) {
  if (times.state == flight::SunState::below) return;
  constexpr auto kHalfDay = std::chrono::hours(12);
  plan::Period band{times.rise.value_or(noon - kHalfDay), times.set.value_or(noon + kHalfDay)};
  band = {std::max(band.from, span.from), std::min(band.to, span.to)};
  if (band.to <= band.from) return;
  // A day without night joins the next; local noons lie a little more or less than a day apart.
  constexpr auto kJoin = std::chrono::minutes(2);
  if (!bands.empty() && band.from <= bands.back().to + kJoin) {
    bands.back().to = std::max(bands.back().to, band.to);
  } else {
    bands.push_back(band);
  }
}

}  // namespace

DayBands day_bands(Position place, const plan::Period& span) {
  const auto first = std::chrono::sys_days(flight::local_date(place, span.from));
  const auto last = std::chrono::sys_days(flight::local_date(place, span.to));
  DayBands bands;
  for (auto day = first - std::chrono::days(1); day <= last + std::chrono::days(1);
       day += std::chrono::days(1)) {
    const flight::Daylight light = flight::daylight(place, std::chrono::year_month_day(day));
    add(bands.sun, light.sun, light.noon, span);
    add(bands.civil_twilight, light.civil_twilight, light.noon, span);
  }
  return bands;
}

}  // namespace sweepwright::formats
