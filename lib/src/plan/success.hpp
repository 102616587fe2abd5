// What of a belief the sectors hold, and what the search finds of it; private to the plan room.
#pragma once

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::plan {

/// Sets each assignment's probabilities of containment and success, and the plan's, with the
/// theoretical bound. Needs the plan's belief, and assignments with POD.
void set_success(Plan& plan);

}  // namespace sweepwright::plan
