// Checks that all patterns share; private to the pattern room.
#pragma once

#include <string_view>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::pattern {

/// Throws Error(value) naming `what` unless the length is finite and above 0.
void require_above_zero(Length length, std::string_view what);

/// The same for a speed.
void require_above_zero(Speed speed, std::string_view what);

/// Error(impossible): an area holds no leg at that spacing.
Error no_leg_fits(Length spacing);

/// Throws Error(value) unless there are 1 to kMostLegs search legs.
void require_leg_count(int legs);

/// Places nearer together than this are one.
inline constexpr Length kSamePlace = Length::metres(1);

/// The path without places that repeat the one before.
Path without_repeats(const Path& path);

}  // namespace sweepwright::pattern
