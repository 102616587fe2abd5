#include "pattern/require.hpp"

#include <fmt/format.h>

#include <cmath>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/pattern/pattern.hpp"

namespace sweepwright::pattern {
namespace {

void require_above_zero(double value, std::string_view what, const std::string& shown) {
  if (value > 0 && std::isfinite(value)) return;
  throw Error(ErrorCode::value, fmt::format("the {} is {}", what, shown),
              fmt::format("give a {} above 0", what));
}

}  // namespace

void require_above_zero(Length length, std::string_view what) {
  require_above_zero(length.metres(), what, format_length(length, LengthUnit::nautical_mile, 3));
}

void require_above_zero(Speed speed, std::string_view what) {
  require_above_zero(speed.metres_per_second(), what, format_speed(speed, SpeedUnit::knot, 1));
}

Error no_leg_fits(Length spacing) {
  return Error(ErrorCode::impossible,
               fmt::format("no search leg fits into the area at a track spacing of {}",
                           format_length(spacing, LengthUnit::nautical_mile, 2)),
               "give a closer track spacing or a larger area");
}

void require_leg_count(int legs) {
  if (legs >= 1 && legs <= kMostLegs) return;
  throw Error(ErrorCode::value, fmt::format("a pattern cannot have {} search legs", legs),
              fmt::format("give 1 to {} legs, or another track spacing", kMostLegs));
}

Path without_repeats(const Path& path) {
  Path apart;
  for (const Position& place : path) {
    if (apart.empty() || geodesic(apart.back(), place).length > kSamePlace) apart.push_back(place);
  }
  return apart;
}

}  // namespace sweepwright::pattern
