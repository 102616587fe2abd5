// The answer of a sweep width question, with its working, as text and as JSON.
#pragma once

#include <optional>
#include <string>

#include "sweepwright/sweep/detection.hpp"
#include "sweepwright/sweep/sweep_width.hpp"

namespace sweepwright::formats {

/// Track spacing and what it gives.
struct PlannedSpacing {
  Length spacing;
  sweep::Coverage coverage;
  sweep::Probability probability_of_detection;
};

struct SweepReport {
  sweep::SweepWidth width;
  sweep::DetectionLaw law{};
  std::optional<PlannedSpacing> planned;
};

/// Coverage and probability that a track spacing gives, and the reverse two.
SweepReport report_for_spacing(const sweep::SweepWidth& width, Length spacing,
                               sweep::DetectionLaw law);
SweepReport report_for_coverage(const sweep::SweepWidth& width, sweep::Coverage coverage,
                                sweep::DetectionLaw law);
SweepReport report_for_probability(const sweep::SweepWidth& width, sweep::Probability wanted,
                                   sweep::DetectionLaw law);

/// The working line by line, then the cautions.
std::string sweep_report_text(const SweepReport& report);
/// `sweep_width_m`, `spacing_m`, `coverage`, `probability_of_detection`, `working`, `cautions`.
std::string sweep_report_json(const SweepReport& report);

}  // namespace sweepwright::formats
