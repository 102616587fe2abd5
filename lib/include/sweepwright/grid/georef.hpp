// GEOREF, the World Geographic Reference System: `NK`, `NKLN`, `NKLN2438`.
//
// Rule: tiles of 15 degrees: a column A to Z eastward from 180 W (no I, no O), a row A to M
//   northward from 90 S (no I). Then the degree in the tile, a letter A to Q (no I, no O) eastward
//   and one northward. Then the minute in the degree, two digits EASTWARD and two northward, also
//   west of Greenwich and south of the equator.
// Edges: a cell owns its south and west edges; 180 belongs to the first column, the north pole to
//   the top row. The source does not say; this is what GeographicLib does.
// Source: US Air Force pamphlet 11-216 (1 March 2001), section 1.38.2.
#pragma once

#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

const Grid& georef_grid();

}  // namespace sweepwright::grid
