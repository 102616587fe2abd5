#include "sweepwright/formats/time_text.hpp"

#include <fmt/format.h>

#include <chrono>

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {

std::string format_utc(TimePoint time) {
  const auto day = std::chrono::floor<std::chrono::days>(time);
  const std::chrono::year_month_day date(day);
  const std::chrono::hh_mm_ss clock(time - day);
  const int year = static_cast<int>(date.year());
  if (year < 0 || year > 9999) {
    throw Error(ErrorCode::value, fmt::format("a time in the year {} cannot be written", year),
                "use years 0000 to 9999");
  }
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", year,
                     static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                     clock.hours().count(), clock.minutes().count(), clock.seconds().count());
}

}  // namespace sweepwright::formats
