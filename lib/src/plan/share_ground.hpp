// Who gets which ground, and at what coverage; private to the plan room.
#pragma once

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::plan {

/// Effort of a unit: W V T.
Area effort(const Assignment& assignment);

/// Sets each assignment's sector: the mission's area, divided in proportion to effort; or, where
/// the mission has no area, the rectangles in which the units find most of the plan's belief.
/// Returns the coverage that each unit's hours reach there, at most the wanted one where an area is
/// given.
std::vector<sweep::Coverage> share_ground(Plan& plan);

}  // namespace sweepwright::plan
