#include <fmt/format.h>

#include <cmath>
#include <cstdint>

#include "sweepwright/base/error.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright {
namespace {

constexpr int kMostDecimals = 9;

/// An angle as a whole number of its smallest written part, so that carrying is whole-number
/// arithmetic and 60 minutes cannot appear.
struct Rounded {
  bool negative;
  std::int64_t parts;
};

Rounded rounded(Angle angle, std::int64_t parts_per_degree) {
  const double parts = std::abs(angle.degrees()) * static_cast<double>(parts_per_degree);
  const std::int64_t whole = std::llround(parts);
  return {angle.degrees() < 0 && whole != 0, whole};
}

std::int64_t power_of_ten(int exponent) {
  std::int64_t power = 1;
  for (int i = 0; i < exponent; ++i) power *= 10;
  return power;
}

/// `parts` tenths, hundredths, ... with a decimal point and `digits` digits before it.
std::string fixed_point(std::int64_t parts, int decimals, int digits) {
  const std::int64_t scale = power_of_ten(decimals);
  if (decimals == 0) return fmt::format("{:0{}}", parts, digits);
  return fmt::format("{:0{}}.{:0{}}", parts / scale, digits, parts % scale, decimals);
}

/// How one coordinate is written.
struct Style {
  int units;  ///< 1 degrees, 2 and minutes, 3 and seconds
  std::string_view separator;
};

std::string coordinate(Angle angle, int degree_digits, std::string_view letters, Style style,
                       int decimals) {
  const std::int64_t scale = power_of_ten(decimals);
  const std::int64_t per_degree = (style.units == 1 ? 1 : style.units == 2 ? 60 : 3600) * scale;
  const Rounded value = rounded(angle, per_degree);
  const char letter = letters[value.negative ? 1 : 0];
  if (style.units == 1) return fixed_point(value.parts, decimals, degree_digits) + letter;
  const std::int64_t degrees = value.parts / per_degree;
  const std::int64_t rest = value.parts % per_degree;
  if (style.units == 2) {
    return fmt::format("{:0{}}{}{}{}", degrees, degree_digits, style.separator,
                       fixed_point(rest, decimals, 2), letter);
  }
  return fmt::format("{:0{}}{}{:02}{}{}{}", degrees, degree_digits, style.separator,
                     rest / (60 * scale), style.separator,
                     fixed_point(rest % (60 * scale), decimals, 2), letter);
}

std::string with_letters(Position position, Style style, std::string_view between, int decimals) {
  return coordinate(position.latitude(), 2, "NS", style, decimals) + std::string(between) +
         coordinate(position.longitude(), 3, "EW", style, decimals);
}

std::string signed_degrees(Angle angle, int decimals) {
  const Rounded value = rounded(angle, power_of_ten(decimals));
  return (value.negative ? "-" : "") + fixed_point(value.parts, decimals, 1);
}

}  // namespace

int usual_decimals(Notation notation) {
  switch (notation) {
    case Notation::decimal_degrees:
      return 5;
    case Notation::degrees_minutes:
      return 2;
    case Notation::degrees_minutes_seconds:
      return 1;
    case Notation::compact_seconds:
    case Notation::icao_minutes:
    case Notation::icao_degrees:
      break;
  }
  return 0;
}

std::string format_position(Position position, Notation notation, int decimals) {
  const bool icao = notation == Notation::icao_minutes || notation == Notation::icao_degrees;
  if (decimals < 0 || decimals > (icao ? 0 : kMostDecimals)) {
    throw Error(ErrorCode::value, fmt::format("{} decimal places of a position", decimals),
                icao ? "the ICAO forms have no decimal places" : "choose from 0 to 9");
  }
  switch (notation) {
    case Notation::decimal_degrees:
      return signed_degrees(position.latitude(), decimals) + ", " +
             signed_degrees(position.longitude(), decimals);
    case Notation::degrees_minutes:
      return with_letters(position, {2, "-"}, " ", decimals);
    case Notation::degrees_minutes_seconds:
      return with_letters(position, {3, "-"}, " ", decimals);
    case Notation::compact_seconds:
      return with_letters(position, {3, ""}, "", decimals);
    case Notation::icao_minutes:
      return with_letters(position, {2, ""}, "", 0);
    case Notation::icao_degrees:
      break;
  }
  return with_letters(position, {1, ""}, "", 0);
}

std::string format_position(Position position, Notation notation) {
  return format_position(position, notation, usual_decimals(notation));
}

}  // namespace sweepwright
