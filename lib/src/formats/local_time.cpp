#include "sweepwright/formats/local_time.hpp"

#include <fmt/format.h>

#include <optional>
#include <string>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

[[noreturn]] void refuse(std::string_view text, std::string_view why) {
  throw Error(ErrorCode::value, fmt::format("'{}' {}", printable(text), why),
              "write date, time and offset from UTC, such as 2026-07-14T12:30:00-06:00");
}

/// Takes exactly `count` digits off the front.
std::optional<int> take_digits(std::string_view& rest, std::size_t count) {
  if (rest.size() < count) return std::nullopt;
  int value = 0;
  for (const char c : rest.substr(0, count)) {
    if (!is_ascii_digit(c)) return std::nullopt;
    value = value * 10 + (c - '0');
  }
  rest.remove_prefix(count);
  return value;
}

bool take_one_of(std::string_view& rest, std::string_view characters) {
  if (rest.empty() || characters.find(rest.front()) == std::string_view::npos) return false;
  rest.remove_prefix(1);
  return true;
}

/// `2026-07-14`
std::optional<std::chrono::year_month_day> take_date(std::string_view& rest) {
  const auto year = take_digits(rest, 4);
  if (!year || !take_one_of(rest, "-")) return std::nullopt;
  const auto month = take_digits(rest, 2);
  if (!month || !take_one_of(rest, "-")) return std::nullopt;
  const auto day = take_digits(rest, 2);
  if (!day) return std::nullopt;
  return std::chrono::year_month_day(std::chrono::year(*year),
                                     std::chrono::month(static_cast<unsigned>(*month)),
                                     std::chrono::day(static_cast<unsigned>(*day)));
}

/// `12:30`
std::optional<std::chrono::minutes> take_hours_minutes(std::string_view& rest, int most_hours) {
  const auto hours = take_digits(rest, 2);
  if (!hours || *hours > most_hours || !take_one_of(rest, ":")) return std::nullopt;
  const auto minutes = take_digits(rest, 2);
  if (!minutes || *minutes > 59) return std::nullopt;
  return std::chrono::hours(*hours) + std::chrono::minutes(*minutes);
}

/// `:45`, `:45.25` or nothing
std::optional<std::chrono::seconds> take_seconds(std::string_view& rest) {
  if (!take_one_of(rest, ":")) return std::chrono::seconds(0);
  const auto seconds = take_digits(rest, 2);
  if (!seconds || *seconds > 59) return std::nullopt;
  if (take_one_of(rest, ".")) {
    if (!take_digits(rest, 1)) return std::nullopt;
    while (take_digits(rest, 1)) continue;
  }
  return std::chrono::seconds(*seconds);
}

/// `Z` or `-06:00`, all that is left
std::chrono::minutes offset(std::string_view text, std::string_view rest) {
  if (rest.empty()) refuse(text, "has no offset from UTC");
  if (rest == "Z" || rest == "z") return std::chrono::minutes(0);
  const bool west = rest.front() == '-';
  if (!take_one_of(rest, "+-")) refuse(text, "does not end with an offset from UTC");
  const auto size = take_hours_minutes(rest, 23);
  if (!size || !rest.empty()) refuse(text, "does not end with an offset from UTC");
  if (west && size->count() == 0) refuse(text, "says with -00:00 that local time is not known");
  const std::chrono::minutes signed_size = west ? -*size : *size;
  if (signed_size < std::chrono::hours(-12) || signed_size > std::chrono::hours(14)) {
    refuse(text, "has an offset outside -12:00 to +14:00");
  }
  return signed_size;
}

}  // namespace

LocalTime parse_local_time(std::string_view text) {
  std::string_view rest = trimmed(text);
  const auto date = take_date(rest);
  if (!date || (!rest.empty() && !take_one_of(rest, "Tt "))) refuse(text, "is not a time");
  if (!date->ok()) refuse(text, "is a date that no calendar has");
  if (date->year() < std::chrono::year(1900) || date->year() > std::chrono::year(2199)) {
    refuse(text, "is not in the years 1900 to 2199");
  }
  if (rest.empty()) refuse(text, "has no time of day");
  const auto hours_minutes = take_hours_minutes(rest, 23);
  const auto seconds = hours_minutes ? take_seconds(rest) : std::nullopt;
  if (!seconds) refuse(text, "has a time of day that no clock shows");
  const std::chrono::minutes offset_from_utc = offset(text, rest);
  return {std::chrono::sys_days(*date) + *hours_minutes + *seconds - offset_from_utc,
          offset_from_utc};
}

}  // namespace sweepwright::formats
