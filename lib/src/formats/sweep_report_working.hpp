// The working of a sweep report: from the sweep width to spacing, probability, ground and hours.
#pragma once

#include "sweepwright/formats/sweep_report.hpp"

namespace sweepwright::formats {

sweep::Working report_working(const SweepReport& report);
/// Those of the sweep width, of what was worked out, and of every output.
std::vector<std::string> report_cautions(const SweepReport& report);

/// Of this search: of the spacing or of the sector search; none when neither was asked for.
std::optional<sweep::Probability> this_probability(const SweepReport& report);
/// Of this search and the earlier ones together; none without either.
std::optional<sweep::Probability> cumulative_probability(const SweepReport& report);

}  // namespace sweepwright::formats
