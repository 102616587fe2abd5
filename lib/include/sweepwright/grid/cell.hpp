// Cell: one named piece of ground of a grid.
//
// Problem: some grids have cells between parallels and meridians, others have square cells that
//   are cut where zones meet. A Cell is cheap for the first kind (its box says all, so that a
//   million of them stream by) and complete for the second (its region says all).
// Promises: P1 exactly one of `box` and `region` describes the ground: `region` is empty when
//   `box` is set.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "sweepwright/grid/lat_lon_box.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::grid {

/// One size of cell in a grid.
struct Level {
  std::string_view name;             ///< as people write it: `15min`, `100km`
  int depth = 0;                     ///< place in Grid::levels(): 0 is the coarsest
  std::variant<Angle, Length> size;  ///< side of a whole cell
};

struct Cell {
  std::string_view system;  ///< the grid's name, such as `gars`
  Level level;
  std::string name;
  std::optional<LatLonBox> box;  ///< set when the cell lies between parallels and meridians
  Region region;                 ///< the cell's ground when it does not
};

/// The cell as a region: parallels get corners until the shortest lines between them are within
/// half a metre. A cell wider than kLocalPlaneReach allows is still returned.
Region outline(const Cell& cell);

/// Area on the ellipsoid.
Area area(const Cell& cell);

/// Where a label goes: the middle of the cell, always inside it.
Position label_point(const Cell& cell);

}  // namespace sweepwright::grid
