// What of a unit's endurance is left for the sector; private to the plan room.
#pragma once

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::plan {

/// Sets the ways between the base and the places where the unit arrives and leaves, what is left of
/// its endurance for the sector, and the search time in it. Throws Error(impossible), naming the
/// unit, when the ways and the reserve leave nothing.
void set_time_on_scene(Assignment& assignment, Position arrive, Position leave);

}  // namespace sweepwright::plan
