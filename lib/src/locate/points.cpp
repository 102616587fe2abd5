// Points that the user defined, and the ICAO bearing and distance from them.
#include <fmt/format.h>

#include <cmath>

#include "locate/bearing.hpp"
#include "locate/cursor.hpp"
#include "locate/readers.hpp"
#include "sweepwright/locate/notations.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::locate {
namespace {

constexpr std::size_t kBearingDigits = 3;
constexpr std::size_t kDistanceDigits = 3;

std::string unknown_point_hint(std::string_view name, const Options& options) {
  if (options.points.empty()) return "no points are defined";
  std::vector<std::string_view> names;
  for (const auto& [known, position] : options.points) names.push_back(known);
  return spelling_hint(name, names);
}

}  // namespace

Attempt read_named_point(const PlainText& text, const Options& options) {
  const auto found = options.points.find(text.text());
  if (found == options.points.end()) return not_mine();
  return understood(found->second, fmt::format("point {}", found->first));
}

Attempt read_icao_bearing(const PlainText& text, const Options& options) {
  const std::string_view all = text.text();
  constexpr std::size_t kDigits = kBearingDigits + kDistanceDigits;
  if (all.size() < kDigits + 2 || all.size() > kDigits + 5) return not_mine();
  const std::size_t digits_at = all.size() - kDigits;
  Cursor cursor(all);
  if (cursor.take_letters().size() != digits_at || cursor.take_digits().size() != kDigits) {
    return not_mine();
  }
  const std::string_view name = all.substr(0, digits_at);
  const auto point = options.points.find(name);
  if (point == options.points.end()) {
    return wrong(text, 0, fmt::format("point {} is not defined", name),
                 unknown_point_hint(name, options));
  }
  const double bearing = decimal_value(all.substr(digits_at, kBearingDigits));
  const double distance = decimal_value(all.substr(digits_at + kBearingDigits));
  if (bearing > 360) {
    return wrong(text, digits_at, fmt::format("{} is not a bearing up to 360", bearing));
  }
  const auto direction = to_true(MagneticDirection::degrees(bearing), point->second, options);
  if (!direction)
    return wrong(text, digits_at, std::string(kNoVariation), std::string(kNoVariationHint));
  return understood(
      travel(point->second, direction->direction, Length::nautical_miles(distance)).position,
      fmt::format("{} NM from point {} on {} (ICAO form)", distance, name, direction->in_words));
}

std::string format_icao_bearing(std::string_view point_name, Position point, Position position,
                                const MagneticVariation& variation) {
  Cursor cursor(point_name);
  const std::size_t letters = cursor.take_letters().size();
  if (!cursor.ended() || letters < 2 || letters > 5) {
    throw Error(ErrorCode::value,
                fmt::format("'{}' is not a point of two to five letters", printable(point_name)));
  }
  if (!variation)
    throw Error(ErrorCode::value, std::string(kNoVariation), std::string(kNoVariationHint));
  const GeodesicLine line = geodesic(point, position);
  const double distance = std::round(line.length.nautical_miles());
  if (distance > 999) {
    throw Error(ErrorCode::impossible,
                fmt::format("{} NM, where the ICAO form ends at 999 NM", distance));
  }
  const Angle magnetic = line.start_track.angle() - variation(point);
  const long whole = std::lround(normalized_360(magnetic).degrees());
  // North is 360 in this form; 000 is no bearing.
  return fmt::format("{}{:03}{:03}", to_upper_ascii(point_name), whole == 0 ? 360 : whole,
                     static_cast<int>(distance));
}

}  // namespace sweepwright::locate
