// Which pattern a unit flies in its sector, and which way; private to the plan room.
#pragma once

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::plan {

struct ChosenPattern {
  pattern::Pattern pattern;
  std::string reason;
};

/// Draws the pattern that the planner chose for the unit. Left free: an expanding square in a small
/// sector round the datum; else the ladder along the sector, from the corner where it takes least
/// time as flown, time into a low sun counted twice, or across it where that is clearly quicker.
/// Needs the assignment's sector, spacing and search time.
ChosenPattern choose_pattern(const Mission& mission, const Assignment& assignment);

}  // namespace sweepwright::plan
