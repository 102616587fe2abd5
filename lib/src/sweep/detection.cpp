#include "sweepwright/sweep/detection.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "sweep/name_matching.hpp"
#include "sweep/require.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

// In the order of DetectionLaw.
constexpr std::array<std::string_view, 3> kLawNames{"inverse-cube", "exponential",
                                                    "definite-range"};
constexpr std::array<std::string_view, 3> kFormulas{"erf(sqrt(pi)/2 x C)", "1 - exp(-C)",
                                                    "min(C, 1)"};

// sqrt(pi)/2, Koopman's constant for parallel sweeps under the inverse cube law.
constexpr double kHalfRootPi = 1 / (2 * std::numbers::inv_sqrtpi);

/// The coverage at which erf(kHalfRootPi C) is p, for 0 <= p < 1.
///
/// Newton's method from the left: the curve rises ever more slowly, so a step never goes past the
/// root, and the slope is exactly exp(-(kHalfRootPi C)^2). It starts at C = p, left of the root
/// because erf(kHalfRootPi C) <= C, and ends when rounding stops the rise. For p near 1 it works
/// with 1 - p, which keeps its digits there.
double inverse_cube_coverage(double p) {
  constexpr int kMostSteps = 200;  // at most 39 were needed, for p next to 1
  double coverage = p;
  for (int step = 0; step < kMostSteps; ++step) {
    const double u = kHalfRootPi * coverage;
    const double missing = p < 0.5 ? p - std::erf(u) : std::erfc(u) - (1 - p);
    const double next = coverage + missing * std::exp(u * u);
    if (!(next > coverage)) break;
    coverage = next;
  }
  return coverage;
}

}  // namespace

Coverage::Coverage(double value) : value_(value) {
  if (!(value >= 0) || !std::isfinite(value)) {
    throw Error(ErrorCode::value, fmt::format("the coverage is {}, expected 0 or more", value));
  }
}

Probability::Probability(double value) : value_(value) {
  if (!(value >= 0 && value <= 1)) {
    throw Error(ErrorCode::value, fmt::format("the probability is {}, expected 0 to 1", value),
                "write 80 percent as 0.8");
  }
}

std::string_view name(DetectionLaw law) {
  return kLawNames.at(static_cast<std::size_t>(law));
}

std::string_view formula(DetectionLaw law) {
  return kFormulas.at(static_cast<std::size_t>(law));
}

std::span<const std::string_view> detection_law_names() {
  return kLawNames;
}

DetectionLaw parse_detection_law(std::string_view text) {
  return static_cast<DetectionLaw>(index_of_name(text, kLawNames, "a detection law"));
}

Probability probability_of_detection(DetectionLaw law, Coverage coverage) {
  const double c = coverage.value();
  switch (law) {
    case DetectionLaw::inverse_cube:
      return Probability(std::erf(kHalfRootPi * c));
    case DetectionLaw::exponential:
      return Probability(-std::expm1(-c));
    case DetectionLaw::definite_range:
      return Probability(std::min(c, 1.0));
  }
  throw Error(ErrorCode::value, "the detection law is not known");
}

Coverage coverage_for(DetectionLaw law, Probability wanted) {
  const double p = wanted.value();
  if (p == 1 && law != DetectionLaw::definite_range) {
    throw Error(ErrorCode::impossible,
                fmt::format("no coverage gives a probability of detection of 1 under the {} law",
                            name(law)),
                "ask for less, such as 0.95");
  }
  switch (law) {
    case DetectionLaw::inverse_cube:
      return Coverage(inverse_cube_coverage(p));
    case DetectionLaw::exponential:
      return Coverage(-std::log1p(-p));
    case DetectionLaw::definite_range:
      return Coverage(p);
  }
  throw Error(ErrorCode::value, "the detection law is not known");
}

Coverage coverage(Length sweep_width, Length track_spacing) {
  require_above_zero(sweep_width, "sweep width");
  require_above_zero(track_spacing, "track spacing");
  return Coverage(sweep_width / track_spacing);
}

Length track_spacing(Length sweep_width, Coverage wanted) {
  require_above_zero(sweep_width, "sweep width");
  if (wanted == Coverage()) {
    throw Error(ErrorCode::value, "the wanted coverage is 0, expected more than 0");
  }
  return sweep_width / wanted.value();
}

Probability cumulative_probability_of_detection(std::span<const Probability> searches) {
  double missed = 1;
  for (const Probability search : searches) missed *= 1 - search.value();
  return Probability(1 - missed);
}

}  // namespace sweepwright::sweep
