// The list of grid systems. Grids that need more than a name are made apart: a user's own charts by
// make_chart_grid(), a local grid by make_local_grid().
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
