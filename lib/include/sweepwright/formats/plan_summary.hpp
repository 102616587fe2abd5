// A plan as a short table for the terminal.
#pragma once

#include <string>

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

/// Incident, one line for each crew, totals, remarks, findings.
std::string plan_summary(const plan::Plan& plan);

}  // namespace sweepwright::formats
