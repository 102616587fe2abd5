#include "formats/number_text.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <iterator>

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

constexpr int kDecimals = 7;

char digit(std::uint64_t value) {
  return static_cast<char>('0' + value % 10);
}

}  // namespace

// A million cells pass here. Positions and boxes are finite and within 360 degrees.
char* write_degrees(char* out, Angle angle) {
  constexpr auto kUnits = static_cast<std::uint64_t>(kUnitsPerDegree);
  const double units = std::abs(angle.degrees()) * kUnitsPerDegree + 0.5;
  const auto rounded = static_cast<std::uint64_t>(units);
  if (angle.degrees() < 0 && rounded > 0) *out++ = '-';
  const std::uint64_t whole = rounded / kUnits;
  if (whole >= 100) *out++ = digit(whole / 100);
  if (whole >= 10) *out++ = digit(whole / 10);
  *out++ = digit(whole);
  std::uint64_t decimals = rounded % kUnits;
  if (decimals == 0) return out;
  *out++ = '.';
  for (int place = kDecimals - 1; place >= 0; --place) {
    out[place] = digit(decimals);
    decimals /= 10;
  }
  out += kDecimals;
  while (out[-1] == '0') --out;
  return out;
}

void append_degrees(std::string& out, Angle angle) {
  std::array<char, kDegreesRoom> text{};
  out.append(text.data(), write_degrees(text.data(), angle));
}

void append_number(std::string& out, double value) {
  if (!std::isfinite(value)) {
    throw Error(ErrorCode::value,
                fmt::format("{} cannot be written: outputs hold finite numbers only", value));
  }
  fmt::format_to(std::back_inserter(out), "{}", value);
}

}  // namespace sweepwright::formats
