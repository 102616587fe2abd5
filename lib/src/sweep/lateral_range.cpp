#include "sweepwright/sweep/lateral_range.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "sweep/interpolation.hpp"
#include "sweep/name_matching.hpp"
#include "sweep/require.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

// In the order of Sides.
constexpr std::array<std::string_view, 2> kSidesNames{"alike", "apart"};

Error wrong(std::string message, std::string hint = {}) {
  return Error(ErrorCode::value, std::move(message), std::move(hint));
}

void check_points(std::span<const LateralRangePoint> points, Sides sides) {
  if (points.size() < 2 || points.size() > kMostLateralRangePoints) {
    throw wrong(fmt::format("the lateral range curve has {} points, expected 2 to {}",
                            points.size(), kMostLateralRangePoints));
  }
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double metres = points[i].offset.metres();
    if (!(std::abs(metres) <= kFarthestLateralRange.metres())) {
      throw wrong(
          fmt::format("point {} of the lateral range curve lies {} m off, expected at most "
                      "{} m",
                      i + 1, metres, kFarthestLateralRange.metres()));
    }
    if (i > 0 && points[i].offset <= points[i - 1].offset) {
      throw wrong(
          fmt::format("the distances of the lateral range curve do not rise at point {}", i + 1));
    }
  }
  if (sides == Sides::alike && points.front().offset != Length()) {
    throw wrong("the lateral range curve does not begin at distance 0",
                "give the probability right on the track line, or the two sides apart");
  }
}

}  // namespace

Sides parse_sides(std::string_view text) {
  return static_cast<Sides>(index_of_name(text, kSidesNames, "a way to give the two sides"));
}

LateralRangeCurve::LateralRangeCurve(std::span<const LateralRangePoint> points, Sides sides) {
  check_points(points, sides);
  if (sides == Sides::alike) {
    for (std::size_t i = points.size(); --i > 0;) {
      points_.push_back({-points[i].offset, points[i].probability});
    }
  }
  points_.insert(points_.end(), points.begin(), points.end());
  if (!(area_under(*this) > Length())) {
    throw wrong("the lateral range curve is 0 everywhere: nothing would be found");
  }
}

Probability LateralRangeCurve::at(Length offset) const {
  if (!(offset >= points_.front().offset && offset <= points_.back().offset)) return {};
  const auto right =
      std::upper_bound(points_.begin(), points_.end(), offset,
                       [](Length at, const LateralRangePoint& point) { return at < point.offset; });
  if (right == points_.end()) return points_.back().probability;
  const auto left = right - 1;
  const double share = (offset - left->offset) / (right->offset - left->offset);
  return Probability(std::lerp(left->probability.value(), right->probability.value(), share));
}

Length area_under(const LateralRangeCurve& curve) {
  Length area;
  const std::vector<LateralRangePoint>& points = curve.points();
  for (std::size_t i = 1; i < points.size(); ++i) {
    area += (points[i].offset - points[i - 1].offset) *
            ((points[i].probability.value() + points[i - 1].probability.value()) / 2);
  }
  return area;
}

Probability lateral_range(DetectionLaw law, Length sweep_width, Length offset) {
  require_above_zero(sweep_width, "sweep width");
  switch (law) {
    case DetectionLaw::inverse_cube: {
      const double widths = sweep_width / offset;  // infinite on the track line: a chance of 1
      return Probability(-std::expm1(-widths * widths / (4 * std::numbers::pi)));
    }
    case DetectionLaw::definite_range:
      return Probability(2 * std::abs(offset.metres()) <= sweep_width.metres() ? 1 : 0);
    case DetectionLaw::exponential:
      break;
  }
  throw Error(ErrorCode::impossible, "the exponential law has no lateral range curve",
              "it is the law of searching at random, without track lines");
}

SweepWidth measured_sweep_width(const LateralRangeTable& table) {
  const Length width = area_under(table.curve);
  const std::vector<LateralRangePoint>& points = table.curve.points();
  SweepWidth result{
      width,
      width,
      {{"Sweep width",
        fmt::format("area under the lateral range curve, {} points from {} m to {} m",
                    points.size(), format_value(points.front().offset.metres()),
                    format_value(points.back().offset.metres())),
        working_length(width), citation(table.info)}},
      {"Sweep width from a lateral range curve: it holds for the crew, object, ground "
       "and weather of its trials"}};
  const Probability ends = std::max(points.front().probability, points.back().probability);
  if (ends > Probability()) {
    result.cautions.push_back(
        fmt::format("The lateral range curve ends at a probability of {}: taken as 0 beyond",
                    format_value(ends.value())));
  }
  return result;
}

}  // namespace sweepwright::sweep
