// What a leg of a flight is called in findings.
//
// Conventions: the number is that of the pattern's leg, as in the leg table.
// Source: the project's own.
#pragma once

#include <cstddef>
#include <string>

#include "sweepwright/flight/flown_pattern.hpp"

namespace sweepwright::hazard {

/// `way out`, `leg 5`, `cross leg 6`, `transit leg 7`, `way back`. Throws std::out_of_range.
std::string leg_name(const flight::FlownPattern& flown, std::size_t leg);

}  // namespace sweepwright::hazard
