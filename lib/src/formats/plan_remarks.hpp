// What the planner must know, gathered from the whole plan; private to the formats room.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

/// The plan's own remarks, then each remark of the crews once, after the sectors that it is about.
std::vector<std::string> plan_remarks(const plan::Plan& plan);

}  // namespace sweepwright::formats
