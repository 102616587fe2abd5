#include "sweepwright/sweep/detection_model.hpp"

#include <fmt/format.h>

#include <array>

#include "sweep/name_matching.hpp"
#include "sweepwright/sweep/parallel_sweeps.hpp"

namespace sweepwright::sweep {
namespace {

// In the order of EffortLayout.
constexpr std::array<std::string_view, 2> kLayoutNames{"parallel", "random"};

/// The law by which coverage alone decides; that of random search whatever one pass finds.
DetectionLaw law_of_coverage(const DetectionModel& model) {
  return model.layout == EffortLayout::random ? DetectionLaw::exponential : model.law;
}

bool uses_curve(const DetectionModel& model) {
  return model.layout == EffortLayout::parallel && model.curve.has_value();
}

}  // namespace

std::string_view name(EffortLayout layout) {
  return kLayoutNames.at(static_cast<std::size_t>(layout));
}

std::span<const std::string_view> effort_layout_names() {
  return kLayoutNames;
}

EffortLayout parse_effort_layout(std::string_view text) {
  return static_cast<EffortLayout>(index_of_name(text, kLayoutNames, "a layout of the effort"));
}

std::string description(const DetectionModel& model) {
  if (model.layout == EffortLayout::random) {
    return fmt::format("effort at random: {}", formula(DetectionLaw::exponential));
  }
  if (model.curve) return "lateral range curve: mean of 1 - (1 - p1)(1 - p2)... between the legs";
  return fmt::format("{}: {}", name(model.law), formula(model.law));
}

Probability probability_of_detection(const DetectionModel& model, Length sweep_width,
                                     Length spacing) {
  const Coverage given = coverage(sweep_width, spacing);
  if (uses_curve(model)) return parallel_sweeps_probability(*model.curve, spacing);
  return probability_of_detection(law_of_coverage(model), given);
}

Length spacing_for(const DetectionModel& model, Length sweep_width, Probability wanted) {
  if (uses_curve(model)) return widest_spacing(*model.curve, wanted);
  return track_spacing(sweep_width, coverage_for(law_of_coverage(model), wanted));
}

}  // namespace sweepwright::sweep
