// Reads a point in time with its local offset: `2026-07-14T12:30:00-06:00`.
//
// Conventions: RFC 3339 section 5.6. The seconds may be left out, a blank may stand for the T, and
//   a fraction of a second is cut off. The offset is always written: `Z`, `+05:30`, `-06:00`.
// Domain: years 1900 to 2199; no second 60; offsets of real clocks, -12:00 to +14:00. `-00:00`
//   (local time unknown, section 4.3) is refused.
// Source: RFC 3339, Date and Time on the Internet: Timestamps.
#pragma once

#include <chrono>
#include <string_view>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::formats {

struct LocalTime {
  TimePoint time;
  std::chrono::minutes offset_from_utc{0};
};

/// Throws Error(value).
LocalTime parse_local_time(std::string_view text);

}  // namespace sweepwright::formats
