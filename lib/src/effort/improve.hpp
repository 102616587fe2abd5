// Improves a layout of boxes until no small change finds more; private to the effort room.
#pragma once

#include <span>

#include "effort/crew.hpp"

namespace sweepwright::effort {

/// Moves edges and boxes (neighbours in the way give way) and exchanges crews, in steps that halve.
/// The layout stays free of overlap and can be flown throughout; it never finds less.
Layout improved(const PlaneBelief& belief, std::span<const Crew> crews, Layout layout);

}  // namespace sweepwright::effort
