// What of an area lies in each cell, and the cells of one grid in terms of another.
//
// Conventions: the ground of a part has edges that are straight in longitude and latitude, as maps
//   draw it, within a metre of the area's.
// Accuracy: the parts of an area add up to it within 1e-9 for grids of parallels and meridians,
//   within 1e-5 for others (clip_test.cpp).
#pragma once

#include <functional>
#include <vector>

#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

/// The part of a cell that lies in an area.
struct ClippedCell {
  Cell cell;
  Region ground;
  Area area;   ///< of the ground, on the ellipsoid
  bool whole;  ///< the area takes the whole cell; `ground` is then the cell's outline
};
using ClippedSink = std::function<void(const ClippedCell&)>;

/// Hands over what visit() with Selection::touching does, each cell with its part. Parts of less
/// than a thousandth of a square metre are left out.
void visit_clipped(const Grid& grid, const Region& area, const Level& level,
                   const ClippedSink& sink);

/// A cell of the new grid, and how much of the old cells' ground it holds.
struct SharedCell {
  Cell cell;
  Area shared;
  double share;  ///< of the new cell, 0 to 1
};

/// The cells of `grid` that together hold the cells of another, in the order in which they are met;
/// each once. The old cells must not overlap. Shares that are only the seam of two maps (a
/// hundred-thousandth of the smaller cell) are left out.
std::vector<SharedCell> convert_cells(const std::vector<Cell>& cells, const Grid& grid,
                                      const Level& level);

}  // namespace sweepwright::grid
