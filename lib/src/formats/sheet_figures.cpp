#include "formats/sheet_figures.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdlib>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::array<std::string_view, 12> kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

std::string date_text(TimePoint time) {
  const std::chrono::year_month_day date(std::chrono::floor<std::chrono::days>(time));
  return fmt::format("{} {} {}", static_cast<unsigned>(date.day()),
                     kMonths[static_cast<unsigned>(date.month()) - 1],
                     static_cast<int>(date.year()));
}

std::string clock_text(TimePoint time) {
  const std::chrono::hh_mm_ss clock(time - std::chrono::floor<std::chrono::days>(time));
  return fmt::format("{:02}:{:02}", clock.hours().count(), clock.minutes().count());
}

/// The second date only when it is another day.
std::string period_text(TimePoint from, TimePoint to) {
  std::string text = date_text(from) + " " + clock_text(from) + " to ";
  if (date_text(to) != date_text(from)) text += date_text(to) + " ";
  return text + clock_text(to);
}

std::string offset_text(std::chrono::minutes offset) {
  const auto minutes = std::abs(offset.count());
  std::string text = fmt::format("UTC{}{}", offset.count() < 0 ? '-' : '+', minutes / 60);
  if (minutes % 60 != 0) text += fmt::format(":{:02}", minutes % 60);
  return text;
}

std::string track_text(const GeodesicLine& line, std::string_view north) {
  const auto whole = [&](TrueDirection direction) {
    std::string digits = format_direction(direction);
    digits.pop_back();  // the letter of its north
    return digits + std::string(north);
  };
  if (std::abs(turn_between(line.start_track, line.end_track).degrees()) < 1) {
    return whole(line.start_track);
  }
  return whole(line.start_track) + " to " + whole(line.end_track);
}

}  // namespace

std::string nautical_miles_text(Length length) {
  return format_length(length, LengthUnit::nautical_mile, 2);
}

std::string nautical_miles_number(Length length) {
  const std::string text = nautical_miles_text(length);
  return text.substr(0, text.find(' '));
}

std::string spacing_text(Length length) {
  return nautical_miles_text(length) + " (" + format_length(length, LengthUnit::metre, 0) + ")";
}

std::string feet_text(Length length) {
  return format_length(length, LengthUnit::foot, 0);
}

std::string knots_text(Speed speed) {
  return format_speed(speed, SpeedUnit::knot, 0);
}

std::string area_text(Area area) {
  return fmt::format("{:.1f} NM² ({:.1f} km²)", area.square_nautical_miles(),
                     area.square_kilometres());
}

std::string percent_text(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

std::string track_text(const GeodesicLine& line) {
  return track_text(line, "T");
}

std::string track_number(const GeodesicLine& line) {
  return track_text(line, "");
}

std::string position_text(Position position) {
  return format_position(position, Notation::degrees_minutes);
}

std::string local_period_text(const plan::Period& period, std::chrono::minutes offset_from_utc) {
  return period_text(period.from + offset_from_utc, period.to + offset_from_utc) + " local (" +
         offset_text(offset_from_utc) + ")";
}

std::string clock_text(TimePoint time, std::chrono::minutes offset_from_utc) {
  return clock_text(std::chrono::round<std::chrono::minutes>(time + offset_from_utc));
}

std::string clock_seconds_text(TimePoint since, Duration after,
                               std::chrono::minutes offset_from_utc) {
  const TimePoint time = since + offset_from_utc + std::chrono::round<std::chrono::seconds>(after);
  const std::chrono::hh_mm_ss clock(time - std::chrono::floor<std::chrono::days>(time));
  return fmt::format("{:02}:{:02}:{:02}", clock.hours().count(), clock.minutes().count(),
                     clock.seconds().count());
}

std::string utc_period_text(const plan::Period& period) {
  return period_text(period.from, period.to) + " UTC";
}

}  // namespace sweepwright::formats
