// The list of grid systems.
#pragma once

#include <string_view>
#include <vector>

#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

/// The names of all systems, in the order in which people are shown them.
std::vector<std::string_view> systems();

/// The grid called `system`. Throws Error(value) naming the choices.
const Grid& grid(std::string_view system);

}  // namespace sweepwright::grid
