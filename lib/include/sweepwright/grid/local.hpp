// A local grid for ground teams: square cells of any size along any direction, `A1`, `C7`, `AB12`.
//
// Rule: the upper left corner of A1 is the origin; "up" is the direction given. Columns are
//   lettered to the right (A to Z, AA to ZZ), rows numbered downward (1 to 999).
// Edges: a cell owns its left and upper edges.
// Conventions: cells are squares of the LocalPlane round the origin, so their edges are shortest
//   lines on the ground and the grid is drawn with straight lines.
// Domain: within kLocalPlaneReach of the origin. Away from it cells are a little smaller than their
//   name says, because the plane is stretched: 2.5 mm in 100 m at 32 km, 25 mm at 100 km. Areas are
//   measured on the ellipsoid.
// Accuracy: a position is taken to a micrometre of the plane.
// Source: own design; letters across and numbers down are common practice, no source.
#pragma once

#include <memory>

#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

struct LocalGrid {
  Position origin;
  TrueDirection up;
  Length cell;  ///< side of a cell, 1 m to 100 km
};

/// The grid; its one level is called `cell`. Throws Error(value) for a side outside its range.
std::unique_ptr<Grid> make_local_grid(const LocalGrid& form);

/// The grid whose A1 is the upper left corner of the area, seen with `up` upward.
LocalGrid local_grid_over(const Region& area, TrueDirection up, Length cell);

}  // namespace sweepwright::grid
