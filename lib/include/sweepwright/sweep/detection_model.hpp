// Detection model: what turns a track spacing into a probability of detection, as one value.
//
// Problem: the planner chooses how the effort is laid out (parallel sweeps, or at random), and what
//   one pass finds (a law, or his own lateral range curve). The rest of a plan need not know which.
// Conventions: with effort laid out at random there is no spacing between legs; the spacing is then
//   the area for each length of track flown, so that C = W / S holds all the same.
// Domain, accuracy: those of detection.hpp and parallel_sweeps.hpp.
// Promises: P1 spacing_for() gives a spacing that finds the wanted probability
//   (detection_model_test.cpp).
// Source: as detection.hpp.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "sweepwright/sweep/detection.hpp"
#include "sweepwright/sweep/lateral_range.hpp"

namespace sweepwright::sweep {

enum class EffortLayout {
  parallel,  ///< parallel sweeps, evenly spaced
  random,    ///< tracks that lie anywhere in the area
};
/// `parallel`, `random`.
std::string_view name(EffortLayout layout);
std::span<const std::string_view> effort_layout_names();
EffortLayout parse_effort_layout(std::string_view text);

struct DetectionModel {
  EffortLayout layout = EffortLayout::parallel;
  DetectionLaw law = DetectionLaw::exponential;
  std::optional<LateralRangeCurve> curve = std::nullopt;  ///< takes the place of the law
};

/// The rule in words, for the working: "inverse-cube: erf(sqrt(pi)/2 x C)".
std::string description(const DetectionModel& model);

/// With a curve, `sweep_width` is the area under it. Throws Error (value) unless both are above 0.
Probability probability_of_detection(const DetectionModel& model, Length sweep_width,
                                     Length spacing);

/// The widest spacing that finds the wanted probability. Throws Error (value) for 0, Error
/// (impossible) for what no spacing finds.
Length spacing_for(const DetectionModel& model, Length sweep_width, Probability wanted);

}  // namespace sweepwright::sweep
