#include "formats/log_reading.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "formats/utf8.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kLongestName = 200;

/// Reads `digits` decimal digits off the front.
std::optional<int> take_digits(std::string_view& text, std::size_t digits) {
  if (text.size() < digits) return std::nullopt;
  int value = 0;
  for (std::size_t i = 0; i < digits; ++i) {
    if (!is_ascii_digit(text[i])) return std::nullopt;
    value = value * 10 + (text[i] - '0');
  }
  text.remove_prefix(digits);
  return value;
}

bool take(std::string_view& text, std::string_view any_of) {
  if (text.empty() || any_of.find(text.front()) == std::string_view::npos) return false;
  text.remove_prefix(1);
  return true;
}

std::optional<std::chrono::year_month_day> take_day(std::string_view& text) {
  const auto year = take_digits(text, 4);
  if (!year || !take(text, "-/")) return std::nullopt;
  const auto month = take_digits(text, 2);
  if (!month || !take(text, "-/")) return std::nullopt;
  const auto day = take_digits(text, 2);
  if (!day) return std::nullopt;
  const std::chrono::year_month_day found{std::chrono::year(*year),
                                          std::chrono::month(static_cast<unsigned>(*month)),
                                          std::chrono::day(static_cast<unsigned>(*day))};
  if (!found.ok()) return std::nullopt;
  return found;
}

std::optional<std::chrono::milliseconds> take_time_of_day(std::string_view& text) {
  const auto hours = take_digits(text, 2);
  if (!hours) return std::nullopt;
  const bool colons = take(text, ":");
  const auto minutes = take_digits(text, 2);
  if (!minutes) return std::nullopt;
  int seconds = 0;
  if (colons ? take(text, ":") : !text.empty() && is_ascii_digit(text.front())) {
    const auto found = take_digits(text, 2);
    if (!found) return std::nullopt;
    seconds = *found;
  }
  if (*hours > 23 || *minutes > 59 || seconds > 60) return std::nullopt;
  int thousandths = 0;
  if (take(text, ".,")) {
    int scale = 100;
    if (text.empty() || !is_ascii_digit(text.front())) return std::nullopt;
    while (!text.empty() && is_ascii_digit(text.front())) {
      thousandths += scale * (text.front() - '0');
      scale /= 10;
      text.remove_prefix(1);
    }
  }
  return std::chrono::hours(*hours) + std::chrono::minutes(*minutes) +
         std::chrono::seconds(seconds) + std::chrono::milliseconds(thousandths);
}

std::optional<std::chrono::minutes> take_zone(std::string_view& text) {
  if (take(text, "Zz")) return std::chrono::minutes(0);
  const int sign = text.starts_with('-') ? -1 : 1;
  if (!take(text, "+-")) return std::nullopt;
  const auto hours = take_digits(text, 2);
  if (!hours) return std::nullopt;
  take(text, ":");
  const auto minutes = text.empty() ? std::optional(0) : take_digits(text, 2);
  if (!minutes) return std::nullopt;
  return sign * (std::chrono::hours(*hours) + std::chrono::minutes(*minutes));
}

}  // namespace

void LogRows::fix(const track::Fix& fix, long row, int part) {
  ++report_.rows;
  sink_({fix, row, part});
}

void LogRows::bad(long row, std::string_view what) {
  ++report_.rows;
  if (report_.bad_rows++ < kBadRowsNamed) {
    report_.first_bad_rows.push_back(fmt::format("row {}: {}", row, what));
  }
}

void LogRows::remark(std::string_view text) {
  if (std::find(report_.remarks.begin(), report_.remarks.end(), text) == report_.remarks.end()) {
    report_.remarks.emplace_back(text);
  }
}

void LogRows::name(std::string_view text) {
  if (!report_.name.empty()) return;
  text = trimmed(text);
  while (!text.empty() && report_.name.size() < kLongestName) {
    const std::size_t length = character_length(text);
    if (length == 0) break;
    report_.name += text.substr(0, length);
    text.remove_prefix(length);
  }
}

bool LogLines::next() {
  text_.clear();
  cut_ = false;
  ++number_;
  std::streambuf& bytes = *stream_.rdbuf();
  for (int c = bytes.sbumpc();; c = bytes.sbumpc()) {
    if (c == std::char_traits<char>::eof()) {
      stream_.setstate(std::ios::eofbit);
      return !text_.empty();
    }
    if (c == '\n') break;
    if (text_.size() < kLongestLine) {
      text_ += static_cast<char>(c);
    } else {
      cut_ = true;
    }
  }
  if (text_.ends_with('\r')) text_.pop_back();
  if (number_ == 1 && text_.starts_with("\xEF\xBB\xBF")) text_.erase(0, 3);
  return true;
}

std::optional<std::chrono::year_month_day> parse_day(std::string_view text) {
  text = trimmed(text);
  const auto day = take_day(text);
  return text.empty() ? day : std::nullopt;
}

std::optional<std::chrono::milliseconds> parse_time_of_day(std::string_view text) {
  text = trimmed(text);
  const auto time = take_time_of_day(text);
  return text.empty() ? time : std::nullopt;
}

std::optional<Instant> parse_instant(std::string_view text, std::chrono::minutes offset,
                                     bool& no_zone) {
  text = trimmed(text);
  const auto day = take_day(text);
  if (!day || !take(text, "Tt ")) return std::nullopt;
  const auto time = take_time_of_day(text);
  if (!time) return std::nullopt;
  if (text.starts_with(' ')) text.remove_prefix(1);
  if (text.empty()) {
    no_zone = true;
  } else {
    const auto zone = take_zone(text);
    if (!zone || !text.empty()) return std::nullopt;
    offset = *zone;
  }
  return Instant(std::chrono::sys_days(*day)) + *time - offset;
}

std::optional<double> parse_number(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('+')) text.remove_prefix(1);
  double value = 0;
  const auto [end, failure] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (failure != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) {
    return std::nullopt;
  }
  return value;
}

std::optional<Position> position_of(std::optional<double> latitude,
                                    std::optional<double> longitude) {
  if (!latitude || !longitude || std::abs(*latitude) > 90 || *longitude < -180 ||
      *longitude > 360) {
    return std::nullopt;
  }
  return Position::at(Angle::degrees(*latitude), Angle::degrees(*longitude));
}

void DayClock::set_day(std::chrono::year_month_day day) {
  const std::chrono::sys_days days(day);
  if (day_ == days) return;
  day_ = days;
  added_ = {};
}

Instant DayClock::at(std::chrono::milliseconds time_of_day) {
  Instant time = Instant(day_.value_or(std::chrono::sys_days())) + time_of_day + added_;
  // Half a day back is a new day; less is a log out of order, which cleaning sorts out.
  if (last_ && time < *last_ - std::chrono::hours(12)) {
    ++added_;
    rolled_over_ = true;
    time += std::chrono::days(1);
  }
  last_ = time;
  return time;
}

}  // namespace sweepwright::formats
