#include "sweepwright/sweep/sensor.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "sweep/interpolation.hpp"
#include "sweep/name_matching.hpp"
#include "sweep/require.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

// In the order of RangeKind.
constexpr std::array<std::string_view, 4> kRangeKindNames{"minimum", "average", "maximum",
                                                          "horizon"};
constexpr std::array<double, 4> kRangeFactors{1.7, 1.5, 1.0, 0.5};

// In the order of Contrast.
constexpr std::array<std::string_view, 4> kContrastNames{"any", "high", "medium", "low"};
constexpr std::array<double, 4> kContrastFactors{1.645, 1.8, 1.6, 1.1};

// Mean radius of the Earth, and the share by which refraction lengthens it for radio rays.
constexpr Length kEarthRadius = Length::metres(6371000);
constexpr double kRefraction = 4.0 / 3;

SweepWidth from_range(Length range, std::string_view what, const WorkingLine& factor) {
  require_above_zero(range, what);
  const Length width = *factor.factor * range;
  const std::string miles = working_length(range);
  return {width,
          width,
          {{fmt::format("{}{}", static_cast<char>(what[0] - 'a' + 'A'), what.substr(1)),
            "given by the planner", miles, ""},
           factor,
           {"Sweep width", fmt::format("{} x {}", miles, factor.value), working_length(width), ""}},
          {}};
}

}  // namespace

std::string_view name(RangeKind kind) {
  return kRangeKindNames.at(static_cast<std::size_t>(kind));
}

std::span<const std::string_view> range_kind_names() {
  return kRangeKindNames;
}

RangeKind parse_range_kind(std::string_view text) {
  return static_cast<RangeKind>(index_of_name(text, kRangeKindNames, "a kind of detection range"));
}

double factor(RangeKind kind) {
  return kRangeFactors.at(static_cast<std::size_t>(kind));
}

std::string_view name(Contrast contrast) {
  return kContrastNames.at(static_cast<std::size_t>(contrast));
}

std::span<const std::string_view> contrast_names() {
  return kContrastNames;
}

Contrast parse_contrast(std::string_view text) {
  return static_cast<Contrast>(index_of_name(text, kContrastNames, "a degree of contrast"));
}

double factor(Contrast contrast) {
  return kContrastFactors.at(static_cast<std::size_t>(contrast));
}

SweepWidth electronic_sweep_width(Length detection_range, RangeKind kind) {
  SweepWidth result = from_range(
      detection_range, "detection range",
      {"Range factor", fmt::format("the range is the {} one", name(kind)),
       format_value(factor(kind)), "Joint Pub 3-50 Volume I, paragraph 535.D", factor(kind)});
  result.cautions.emplace_back(
      "Width of an electronic sensor: hills, buildings and a damaged or lying aerial shorten its "
      "range");
  return result;
}

SweepWidth ground_team_sweep_width(Length range_of_detection, Contrast contrast) {
  SweepWidth result = from_range(
      range_of_detection, "range of detection",
      {"Contrast factor", fmt::format("contrast: {}", name(contrast)),
       format_value(factor(contrast)),
       "Wilderness and Environmental Medicine 2014, doi 10.1016/j.wem.2013.09.016, abstract",
       factor(contrast)});
  result.cautions.emplace_back(
      "Width of a ground team: measure the range of detection in this ground, light and season, "
      "with an object like the one that is sought");
  return result;
}

Length radio_horizon(AerialHeights heights) {
  const bool fine = heights.searcher >= Length() && heights.beacon >= Length() &&
                    heights.searcher + heights.beacon > Length();
  if (!fine || !std::isfinite((heights.searcher + heights.beacon).metres())) {
    throw Error(
        ErrorCode::value,
        fmt::format("the aerial heights are {} m and {} m, expected 0 or more and one above "
                    "0",
                    heights.searcher.metres(), heights.beacon.metres()));
  }
  const auto horizon = [](Length height) {
    return std::sqrt(2 * kRefraction * kEarthRadius.metres() * height.metres());
  };
  return Length::metres(horizon(heights.searcher) + horizon(heights.beacon));
}

SweepWidth horizon_sweep_width(AerialHeights heights) {
  SweepWidth result = electronic_sweep_width(radio_horizon(heights), RangeKind::horizon);
  WorkingLine& range = result.working.front();
  range.expression =
      fmt::format("radio horizon for heights of {} ft and {} ft",
                  format_value(heights.searcher.feet()), format_value(heights.beacon.feet()));
  range.source = "Federal Standard 1037C, radio horizon range";
  return result;
}

}  // namespace sweepwright::sweep
