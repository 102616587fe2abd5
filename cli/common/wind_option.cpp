#include "common/wind_option.hpp"

#include <fmt/format.h>

#include <variant>

#include "common/option_value.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/local_time.hpp"
#include "sweepwright/magnetic/variation.hpp"

namespace sweepwright::cli {
namespace {

TrueDirection true_direction(std::string_view text, Position place, TimePoint date) {
  const std::string_view shown = trimmed(text);
  const bool bare = !shown.empty() && (is_ascii_digit(shown.back()) || shown.back() == '.');
  const auto direction = parse_direction(std::string(shown) + (bare ? "T" : ""));
  if (const auto* is_true = std::get_if<TrueDirection>(&direction)) return *is_true;
  return magnetic::to_true(std::get<MagneticDirection>(direction),
                           magnetic::variation(place, date));
}

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts{""};
  for (const char c : text) {
    if (c == at) {
      parts.emplace_back();
    } else {
      parts.back() += c;
    }
  }
  return parts;
}

flight::WindReport parse_wind(const std::string& text, Position place, TimePoint date,
                              bool one_of_several) {
  const std::vector<std::string> parts = split(text, '@');
  if (parts.size() > 3) {
    throw Error(ErrorCode::value, fmt::format("'{}' has too many parts", printable(text)),
                "write DIRECTION/SPEED, DIRECTION/SPEED@HEIGHT or DIRECTION/SPEED@HEIGHT@TIME");
  }
  if (one_of_several && parts.size() == 1) {
    throw Error(ErrorCode::value,
                fmt::format("there are several winds, and '{}' has no height", printable(text)),
                "write each as DIRECTION/SPEED@HEIGHT, such as 250/15kt@2000ft");
  }
  const DirectionAndSpeed wind = parse_direction_and_speed(parts[0], place, date);
  return {parts.size() > 1 ? parse_length(parts[1]) : Length(),
          parts.size() > 2 ? formats::parse_local_time(parts[2]).time : TimePoint(),
          {wind.direction, wind.speed}};
}

}  // namespace

DirectionAndSpeed parse_direction_and_speed(const std::string& text, Position place,
                                            TimePoint date) {
  const std::size_t slash = text.find('/');
  if (slash == std::string::npos) {
    throw Error(ErrorCode::value,
                fmt::format("'{}' is not a direction and a speed", printable(text)),
                "write DIRECTION/SPEED, such as 250/15kt");
  }
  const DirectionAndSpeed found{true_direction(text.substr(0, slash), place, date),
                                parse_speed(text.substr(slash + 1))};
  if (found.speed < Speed()) {
    throw Error(ErrorCode::value, fmt::format("the speed of '{}' is below 0", printable(text)),
                "turn the direction round instead");
  }
  return found;
}

void WindOption::add_to(CLI::App& command) {
  command
      .add_option("--wind", winds,
                  "Where the wind comes from, true unless marked M, and its speed; several with "
                  "height, or height and time")
      ->type_name("DIRECTION/SPEED[@HEIGHT[@TIME]]");
  command.add_option("--height", height, "Height of flight, for winds of several heights")
      ->type_name("LENGTH");
}

flight::WindField WindOption::field(Position place, TimePoint date) const {
  std::vector<flight::WindReport> reports;
  for (const std::string& text : winds) {
    reports.push_back(option_value("--wind", text, [&](const std::string& typed) {
      return parse_wind(typed, place, date, winds.size() > 1);
    }));
  }
  return flight::WindField(std::move(reports));
}

Length WindOption::flight_height() const {
  return height.empty() ? Length() : option_value("--height", height, parse_length);
}

}  // namespace sweepwright::cli
