// The plan's flights against what stands in their way; private to the plan room.
#pragma once

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::plan {

/// Sets each assignment's terrain check and findings, and the plan's findings. Needs patterns as
/// flown.
void check_flights(Plan& plan);

}  // namespace sweepwright::plan
