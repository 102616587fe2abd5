#include "formats/number_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <iterator>

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

constexpr int kDecimals = 7;

char* write_whole(char* out, std::uint64_t value) {
  std::array<char, 20> digits{};
  char* first = digits.end();
  do {
    *--first = static_cast<char>('0' + value % 10);
    value /= 10;
  } while (value > 0);
  return std::copy(first, digits.end(), out);
}

}  // namespace

char* write_degrees(char* out, Angle angle) {
  constexpr auto kUnits = static_cast<std::uint64_t>(kUnitsPerDegree);
  const double units = angle.degrees() * kUnitsPerDegree;
  // Positions and boxes are finite and within 360 degrees.
  const std::int64_t rounded = std::llround(units);
  if (rounded < 0) *out++ = '-';
  const auto size = static_cast<std::uint64_t>(std::abs(rounded));
  out = write_whole(out, size / kUnits);
  std::uint64_t decimals = size % kUnits;
  if (decimals == 0) return out;
  *out++ = '.';
  for (int place = kDecimals - 1; place >= 0; --place) {
    out[place] = static_cast<char>('0' + decimals % 10);
    decimals /= 10;
  }
  out += kDecimals;
  while (out[-1] == '0') --out;
  return out;
}

void append_degrees(std::string& out, Angle angle) {
  std::array<char, 24> text{};
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
