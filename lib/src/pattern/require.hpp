// Checks that all patterns share; private to the pattern room.
#pragma once

#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity.hpp"

namespace sweepwright::pattern {

/// Throws Error(value) naming `what` unless the length is finite and above 0.
void require_above_zero(Length length, std::string_view what);

/// The same for a speed.
void require_above_zero(Speed speed, std::string_view what);

/// Error(impossible): an area holds no leg at that spacing.
Error no_leg_fits(Length spacing);

/// Throws Error(value) unless there are 1 to kMostLegs search legs.
void require_leg_count(int legs);

}  // namespace sweepwright::pattern
