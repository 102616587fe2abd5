// The one-degree cell grid and its quarters: `36/102`, `36/102A` ... `36/102AADD`.
//
// Rule: a cell of one degree is named by the whole-degree intersection at its SOUTH-EAST corner,
//   latitude first: 36/102 lies north and west of 36 N 102 W. Each cell is cut in four: A
//   north-west, B north-east, C south-west, D south-east; the letters are appended, one for each
//   cut: 30', 15', 7.5', 3.75'.
// Edges: a cell owns its south and EAST edges (36 N 102 W is in 36/102DDDD). The topmost cells own
//   the north pole. The 180th meridian belongs to the cells on its western (Asian) side.
// Hemispheres: the published rule knows north and west only. Here the same corner names the cell
//   everywhere, with hemisphere letters: 34S/152E lies between 34 S and 33 S, 151 E and 152 E. So
//   every intersection names one cell and every cell has one name: latitudes run from 90S over 01S
//   and 00N to 89N, longitudes from 179W over 000W and 001E to 180E. 00S, 000E and 180W are the
//   same lines as 00N, 000W and 180E; they are refused, because their writer may mean the cell on
//   the other side. A name without letters is north and west; letters come in pairs.
// Written: without letters north and west, with letters elsewhere; lettered_quarter_grid() writes
//   them everywhere. Both read both forms.
// Source: Mission Aircrew Reference Text Vol II, section 5.10.1 (corner rule). Quartering seen for
//   15' cells, levels from memory, 3.75' by continuation; hemispheres and edges are our own.
#pragma once

#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

const Grid& quarter_grid();

/// The same grid, whose names always have hemisphere letters: `36N/102WA`.
const Grid& lettered_quarter_grid();

/// A quarter-grid name with its hemisphere letters: `36/102A` becomes `36N/102WA`.
std::string with_hemisphere_letters(std::string_view name);

}  // namespace sweepwright::grid
