// The neighbours of a cell in a grid whose cells have no rows and columns in common everywhere.
#pragma once

#include <vector>

#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

/// The cells of the same level within a metre of the cell, clockwise from the north.
std::vector<Cell> surroundings(const Grid& grid, const Cell& cell);

}  // namespace sweepwright::grid
