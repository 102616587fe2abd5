#include "sweepwright/base/quantity_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <string>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright {
namespace {

/// One spelling of a unit and the size of one such unit in the stored unit.
struct UnitSpelling {
  std::string_view text;
  double size;
};

constexpr std::array<UnitSpelling, 10> kLengthUnits{{{"nm", kMetresPerNauticalMile},
                                                     {"nmi", kMetresPerNauticalMile},
                                                     {"km", 1000},
                                                     {"mi", kMetresPerStatuteMile},
                                                     {"sm", kMetresPerStatuteMile},
                                                     {"m", 1},
                                                     {"ft", kMetresPerFoot},
                                                     {"feet", kMetresPerFoot},
                                                     {"foot", kMetresPerFoot},
                                                     {"metres", 1}}};
constexpr std::array<UnitSpelling, 11> kSpeedUnits{{{"kt", kMetresPerNauticalMile / 3600},
                                                    {"kts", kMetresPerNauticalMile / 3600},
                                                    {"knots", kMetresPerNauticalMile / 3600},
                                                    {"knot", kMetresPerNauticalMile / 3600},
                                                    {"mph", kMetresPerStatuteMile / 3600},
                                                    {"km/h", 1 / 3.6},
                                                    {"kmh", 1 / 3.6},
                                                    {"kph", 1 / 3.6},
                                                    {"m/s", 1},
                                                    {"mps", 1},
                                                    {"ms-1", 1}}};
constexpr double kSquareNauticalMile = kMetresPerNauticalMile * kMetresPerNauticalMile;
constexpr double kSquareStatuteMile = kMetresPerStatuteMile * kMetresPerStatuteMile;
constexpr std::array<UnitSpelling, 16> kAreaUnits{{{"nm2", kSquareNauticalMile},
                                                   {"nm^2", kSquareNauticalMile},
                                                   {"nmi2", kSquareNauticalMile},
                                                   {"sq nm", kSquareNauticalMile},
                                                   {"sqnm", kSquareNauticalMile},
                                                   {"km2", 1e6},
                                                   {"km^2", 1e6},
                                                   {"sq km", 1e6},
                                                   {"sqkm", 1e6},
                                                   {"mi2", kSquareStatuteMile},
                                                   {"mi^2", kSquareStatuteMile},
                                                   {"sq mi", kSquareStatuteMile},
                                                   {"sqmi", kSquareStatuteMile},
                                                   {"m2", 1},
                                                   {"m^2", 1},
                                                   {"ha", 1e4}}};
constexpr std::array<UnitSpelling, 10> kDurationUnits{{{"h", 3600},
                                                       {"hr", 3600},
                                                       {"hour", 3600},
                                                       {"hours", 3600},
                                                       {"min", 60},
                                                       {"mins", 60},
                                                       {"minutes", 60},
                                                       {"s", 1},
                                                       {"sec", 1},
                                                       {"seconds", 1}}};

constexpr std::string_view kLengthWanted =
    "a length with its unit, such as 12NM, 20km, 8mi, 300m or 500ft";
constexpr std::string_view kSpeedWanted =
    "a speed with its unit, such as 90kt, 100mph, 160km/h or 25m/s";
constexpr std::string_view kAreaWanted =
    "an area with its unit, such as 400NM2, 1200km2, 150mi2 or 80ha";
constexpr std::string_view kDurationWanted = "a time with its unit, such as 2h, 1h30, 90min or 45s";
constexpr std::string_view kDirectionWanted =
    "a direction with its north, such as 045T (true) or 030M (magnetic)";

[[noreturn]] void refuse(std::string_view text, std::string_view wanted, std::string_view why) {
  throw Error(ErrorCode::value, fmt::format("'{}' {}", printable(text), why),
              fmt::format("write {}", wanted));
}

/// The value, where a double holds it.
double finite(double value, std::string_view text, std::string_view wanted) {
  if (!std::isfinite(value)) refuse(text, wanted, "is too large");
  return value;
}

/// Takes a decimal number without a sign off the front of `rest`; nothing when there is none.
/// Fixed format only: `1e3` or `inf` on the radio is a mistake, not a number.
std::optional<double> take_unsigned(std::string_view& rest) {
  if (rest.empty() || !(is_ascii_digit(rest.front()) || rest.front() == '.')) return std::nullopt;
  double value = 0;
  const auto [end, error] =
      std::from_chars(rest.data(), rest.data() + rest.size(), value, std::chars_format::fixed);
  if (error != std::errc()) return std::nullopt;
  rest.remove_prefix(static_cast<std::size_t>(end - rest.data()));
  return value;
}

/// Takes a sign off the front of `rest`: -1, or +1 where there is none.
double take_sign(std::string_view& rest) {
  const char first = rest.empty() ? ' ' : rest.front();
  if (first == '-' || first == '+') rest.remove_prefix(1);
  return first == '-' ? -1 : 1;
}

/// Takes a decimal number off the front of `rest`; nothing when there is none.
std::optional<double> take_number(std::string_view& rest) {
  const double sign = take_sign(rest);
  const std::optional<double> value = take_unsigned(rest);
  return value ? std::optional<double>(sign * *value) : std::nullopt;
}

template <std::size_t N>
std::optional<double> unit_size(std::string_view unit, const std::array<UnitSpelling, N>& units) {
  const std::string lower = to_lower_ascii(unit);
  for (const UnitSpelling& spelling : units) {
    if (spelling.text == lower) return spelling.size;
  }
  return std::nullopt;
}

template <std::size_t N>
double parse_quantity(std::string_view text, const std::array<UnitSpelling, N>& units,
                      std::string_view wanted) {
  std::string_view rest = trimmed(text);
  if (rest.empty()) refuse(text, wanted, "is empty");
  const std::optional<double> number = take_number(rest);
  if (!number) refuse(text, wanted, "does not start with a number");
  const std::string_view unit = trimmed(rest);
  if (unit.empty()) refuse(text, wanted, "has no unit");
  const std::optional<double> size = unit_size(unit, units);
  if (!size) refuse(text, wanted, fmt::format("has the unknown unit '{}'", printable(unit)));
  return finite(*number * *size, text, wanted);
}

bool all_digits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), is_ascii_digit);
}

/// `1:30`, hours and minutes. `text` is the whole, for messages.
double clock_seconds(std::string_view rest, std::string_view text) {
  const std::size_t colon = rest.find(':');
  std::string_view hours = rest.substr(0, colon);
  std::string_view minutes = rest.substr(colon + 1);
  if (!all_digits(hours) || !all_digits(minutes) || minutes.size() != 2 || minutes[0] > '5') {
    refuse(text, kDurationWanted, "is not hours and minutes");
  }
  // Digits are a number, unless there are too many for a double.
  return take_unsigned(hours).value_or(INFINITY) * 3600 + take_unsigned(minutes).value_or(0) * 60;
}

/// `1h30`, `90min`, `1h30min45s`: numbers with units of time, in falling order.
double unit_seconds(std::string_view rest, std::string_view text) {
  double total = 0;
  double previous_size = 0;  // 0: none yet
  double previous = 0;
  do {
    const std::optional<double> number = take_unsigned(rest);
    if (!number) refuse(text, kDurationWanted, "is not a time");
    rest = trimmed(rest);
    const auto letters_end = std::find_if_not(rest.begin(), rest.end(), is_ascii_letter);
    const std::string_view unit =
        rest.substr(0, static_cast<std::size_t>(letters_end - rest.begin()));
    std::optional<double> size = unit_size(unit, kDurationUnits);
    // `1h30`: a number that ends the text after hours is in minutes.
    if (rest.empty() && previous_size == 3600) size = 60;
    if (!size && unit.empty()) refuse(text, kDurationWanted, "has no unit");
    if (!size) {
      refuse(text, kDurationWanted, fmt::format("has the unknown unit '{}'", printable(unit)));
    }
    if (previous_size > 0) {
      if (*size >= previous_size) refuse(text, kDurationWanted, "names its units out of order");
      if (*number >= 60) refuse(text, kDurationWanted, "has 60 or more of a smaller unit");
      if (previous != std::floor(previous)) {
        refuse(text, kDurationWanted, "has a fraction before a smaller unit");
      }
    }
    total += *number * *size;
    previous = *number;
    previous_size = *size;
    rest = trimmed(rest.substr(unit.size()));
  } while (!rest.empty());
  return total;
}

/// Half away from zero, and never "-0.0".
std::string fixed(double value, int decimals) {
  const double scale = std::pow(10.0, decimals);
  const double rounded = std::round(value * scale) / scale;
  return fmt::format("{:.{}f}", rounded == 0 ? 0.0 : rounded, decimals);
}

template <typename D>
std::string direction_text(D direction, char north) {
  const int whole = static_cast<int>(std::lround(direction.degrees())) % 360;
  return fmt::format("{:03}{}", whole, north);
}

}  // namespace

Length parse_length(std::string_view text) {
  // Mariners write nautical miles as M, others metres or statute miles.
  std::string_view unit = trimmed(text);
  if (take_number(unit) && trimmed(unit) == "M") {
    refuse(text, kLengthWanted, "has the unknown unit 'M'");
  }
  return Length::metres(parse_quantity(text, kLengthUnits, kLengthWanted));
}

Speed parse_speed(std::string_view text) {
  return Speed::metres_per_second(parse_quantity(text, kSpeedUnits, kSpeedWanted));
}

Area parse_area_size(std::string_view text) {
  return Area::square_metres(parse_quantity(text, kAreaUnits, kAreaWanted));
}

Duration parse_duration(std::string_view text) {
  std::string_view rest = trimmed(text);
  if (rest.empty()) refuse(text, kDurationWanted, "is empty");
  const double sign = take_sign(rest);
  const bool clock = rest.find(':') != std::string_view::npos;
  const double seconds = clock ? clock_seconds(rest, text) : unit_seconds(rest, text);
  return Duration(finite(sign * seconds, text, kDurationWanted));
}

std::variant<TrueDirection, MagneticDirection> parse_direction(std::string_view text) {
  std::string_view rest = trimmed(text);
  if (rest.empty()) refuse(text, kDirectionWanted, "is empty");
  const std::optional<double> number = take_number(rest);
  if (!number) refuse(text, kDirectionWanted, "does not start with a number");
  if (*number < 0 || *number > 360) refuse(text, kDirectionWanted, "is not from 0 to 360 degrees");
  rest = trimmed(rest);
  const std::string north = to_lower_ascii(rest);
  if (north.empty()) refuse(text, kDirectionWanted, "does not say true or magnetic");
  if (north == "t" || north == "true") return TrueDirection::degrees(*number);
  if (north == "m" || north == "mag" || north == "magnetic")
    return MagneticDirection::degrees(*number);
  refuse(text, kDirectionWanted, fmt::format("has the unknown north '{}'", printable(rest)));
}

double parse_number(std::string_view text, std::string_view what) {
  std::string_view rest = trimmed(text);
  const std::optional<double> number = take_number(rest);
  if (!number || !rest.empty()) {
    throw Error(ErrorCode::value, fmt::format("'{}' is not a number", printable(text)),
                fmt::format("write {} as a plain number such as 1.5", what));
  }
  return *number;
}

int parse_whole_number(std::string_view text, int least, int most, std::string_view what) {
  const std::string_view digits = trimmed(text);
  int value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error != std::errc() || end != digits.data() + digits.size() || value < least ||
      value > most) {
    throw Error(ErrorCode::value, fmt::format("'{}' cannot be {}", printable(text), what),
                fmt::format("write a whole number from {} to {}", least, most));
  }
  return value;
}

std::string format_length(Length length, LengthUnit unit, int decimals) {
  switch (unit) {
    case LengthUnit::nautical_mile:
      return fixed(length.nautical_miles(), decimals) + " NM";
    case LengthUnit::kilometre:
      return fixed(length.kilometres(), decimals) + " km";
    case LengthUnit::statute_mile:
      return fixed(length.statute_miles(), decimals) + " mi";
    case LengthUnit::metre:
      return fixed(length.metres(), decimals) + " m";
    case LengthUnit::foot:
      return fixed(length.feet(), decimals) + " ft";
  }
  return {};
}

std::string format_speed(Speed speed, SpeedUnit unit, int decimals) {
  switch (unit) {
    case SpeedUnit::knot:
      return fixed(speed.knots(), decimals) + " kt";
    case SpeedUnit::kilometre_per_hour:
      return fixed(speed.kilometres_per_hour(), decimals) + " km/h";
    case SpeedUnit::statute_mile_per_hour:
      return fixed(speed.statute_miles_per_hour(), decimals) + " mph";
    case SpeedUnit::metre_per_second:
      return fixed(speed.metres_per_second(), decimals) + " m/s";
  }
  return {};
}

std::string format_duration(Duration duration) {
  const long long seconds = std::llround(duration.count());
  const long long size = std::llabs(seconds);
  return fmt::format("{}{}:{:02}:{:02}", seconds < 0 ? "-" : "", size / 3600, size / 60 % 60,
                     size % 60);
}

std::string format_duration_minutes(Duration duration) {
  const long long minutes = std::llround(duration.count() / 60);
  const long long size = std::llabs(minutes);
  return fmt::format("{}{}:{:02}", minutes < 0 ? "-" : "", size / 60, size % 60);
}

std::string format_direction(TrueDirection direction) {
  return direction_text(direction, 'T');
}
std::string format_direction(MagneticDirection direction) {
  return direction_text(direction, 'M');
}

}  // namespace sweepwright
