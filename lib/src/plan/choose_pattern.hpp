// Which pattern a unit flies in its sector, and which way; private to the plan room.
#pragma once

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::plan {

struct ChosenPattern {
  pattern::Pattern pattern;
  std::string reason;
};

/// Draws the pattern that the planner chose for the unit, or parallel track along the sector's long
/// side, from the corner nearest to the unit's base. Needs the assignment's sector and spacing.
ChosenPattern choose_pattern(const Mission& mission, const Assignment& assignment);

}  // namespace sweepwright::plan
