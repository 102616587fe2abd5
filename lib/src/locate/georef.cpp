#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>

#include "locate/cursor.hpp"
#include "locate/readers.hpp"
#include "sweepwright/locate/notations.hpp"

namespace sweepwright::locate {
namespace {

constexpr std::string_view kColumns = "ABCDEFGHJKLMNPQRSTUVWXYZ";  // 15 degrees each, from 180 W
constexpr std::string_view kRows = "ABCDEFGHJKLM";                 // 15 degrees each, from 90 S
constexpr std::string_view kUnits = "ABCDEFGHJKLMNPQ";             // one degree each
constexpr std::size_t kMostDigits = 9;  // of one coordinate: minutes and seven decimals
constexpr std::string_view kSeparators = " -,;:/";

/// What each of the four letters must be.
struct LetterRule {
  std::string_view letters;
  std::string_view expected;
};
constexpr LetterRule kLetterRules[] = {
    {kColumns, "a column from A to Z without I and O"},
    {kRows, "a row from A to M without I"},
    {kUnits, "a degree of longitude from A to Q without I and O"},
    {kUnits, "a degree of latitude from A to Q without I and O"},
};

/// The middle of the stretch of minutes that the digits name: 35 is 35.5, 351 is 35.15, nothing is
/// 30. No value for 60 minutes or more.
std::optional<double> middle_minutes(std::string_view digits) {
  if (digits.empty()) return 30;
  const double scale = std::pow(10, static_cast<double>(digits.size()) - 2);
  const double minutes = (decimal_value(digits) + 0.5) / scale;
  if (minutes >= 60) return std::nullopt;
  return minutes;
}

/// Angles are taken to a billionth of an arc second, as grid/grid.hpp does, so that the double
/// nearest to an edge lies on it.
constexpr double kFinePerMinute = 60e9;

std::int64_t power_of_ten(int exponent) {
  std::int64_t power = 1;
  for (int i = 0; i < exponent; ++i) power *= 10;
  return power;
}

/// How many whole steps of `size` lie between `start` degrees and the angle; one less at the end of
/// the `range`.
std::int64_t steps_from(Angle angle, int start, std::int64_t range, std::int64_t size) {
  const std::int64_t fine = std::llround(angle.degrees() * 60 * kFinePerMinute) -
                            std::llround(start * 60 * kFinePerMinute);
  return std::min(fine, range - 1) / size;
}

}  // namespace

Attempt read_georef(const PlainText& typed, const Options&) {
  const PlainText tight = typed.without(kSeparators);
  Cursor cursor(tight.text());
  const std::string_view letters = cursor.take_letters();
  const std::size_t digits_at = cursor.at();
  const std::string_view digits = cursor.take_digits();
  if (letters.size() != 4 || !cursor.ended()) return not_mine();
  // Without digits only four letters that are a name are taken for one.
  int indices[4] = {};
  for (std::size_t i = 0; i < 4; ++i) {
    const std::size_t index = kLetterRules[i].letters.find(letters[i]);
    if (index == std::string_view::npos) {
      if (digits.empty()) return not_mine();
      return wrong(tight, i,
                   fmt::format("'{}' where GEOREF has {}", letters[i], kLetterRules[i].expected));
    }
    indices[i] = static_cast<int>(index);
  }
  const std::size_t half = digits.size() / 2;
  if (digits.size() % 2 != 0 || half == 1 || half > kMostDigits) {
    return wrong(tight, digits.size() % 2 != 0 ? cursor.at() : digits_at,
                 fmt::format("{} digits, where GEOREF has 4, 6, 8 or more, half for each minute",
                             digits.size()));
  }
  const std::optional<double> east = middle_minutes(digits.substr(0, half));
  const std::optional<double> north = middle_minutes(digits.substr(half));
  if (!east || !north) {
    const std::size_t at = digits_at + (east ? half : 0);
    return wrong(
        tight, at,
        fmt::format("{} minutes, where minutes run from 0 to 59", tight.text().substr(at, 2)));
  }
  const double longitude = -180 + 15 * indices[0] + indices[2] + *east / 60;
  const double latitude = -90 + 15 * indices[1] + indices[3] + *north / 60;
  std::string size = "1 degree";
  if (half == 2) size = "1 minute";
  if (half > 2) size = fmt::format("0.{:0>{}} minute", 1, half - 2);
  return understood(Position::at(Angle::degrees(latitude), Angle::degrees(longitude)),
                    fmt::format("GEOREF, middle of a cell of {}", size));
}

std::string format_georef(Position position, int decimals) {
  if (decimals < 0 || decimals > 7) {
    throw Error(ErrorCode::value, fmt::format("{} decimals of GEOREF minutes", decimals),
                "choose from 0 to 7");
  }
  const auto fine_per_minute = static_cast<std::int64_t>(kFinePerMinute);
  const std::int64_t size = fine_per_minute / power_of_ten(decimals);
  // 180 E is 180 W; the pole belongs to the cells south of it.
  const std::int64_t east =
      steps_from(position.longitude(), -180, 360 * 60 * fine_per_minute, size);
  const std::int64_t north = steps_from(position.latitude(), -90, 180 * 60 * fine_per_minute, size);
  const std::int64_t per_degree = 60 * fine_per_minute / size;
  const auto letter = [](std::string_view letters, std::int64_t index) {
    return letters[static_cast<std::size_t>(index)];
  };
  return fmt::format("{}{}{}{}{:0{}}{:0{}}", letter(kColumns, east / (15 * per_degree)),
                     letter(kRows, north / (15 * per_degree)),
                     letter(kUnits, east / per_degree % 15),
                     letter(kUnits, north / per_degree % 15), east % per_degree, decimals + 2,
                     north % per_degree, decimals + 2);
}

}  // namespace sweepwright::locate
