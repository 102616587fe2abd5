// First layouts for a flyable plan, to be improved; private to the effort room.
#pragma once

#include <span>
#include <vector>

#include "effort/crew.hpp"

namespace sweepwright::effort {

/// One to three layouts that all crews can fly and whose boxes do not overlap; none when there is
/// no such layout on the lattice of boxes tried. The best single rectangle of all crews together,
/// divided, comes first when it can be flown.
std::vector<Layout> first_layouts(const PlaneBelief& belief, std::span<const Crew> crews);

}  // namespace sweepwright::effort
