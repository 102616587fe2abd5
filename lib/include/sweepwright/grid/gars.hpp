// GARS, the Global Area Reference System: `166LM`, `166LM3`, `166LM37`.
//
// Rule: cells of 30' are named by a column 001 to 720 eastward from 180 W and a row AA to QZ
//   northward from 90 S (no I, no O). A digit names the 15' quadrant: 1 north-west, 2 north-east,
//   3 south-west, 4 south-east; one more names the 5' area, 1 to 9 as on a telephone, 1 in the
//   north-west.
// Edges: a cell owns its south and west edges; 180 belongs to column 001, the north pole to row QZ.
//   The standard's text does not say; this is what GeographicLib does.
// Source: CJCSI 3900.01C (30 June 2007), Global Area Reference System, as cited by encyclopedias.
#pragma once

#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

const Grid& gars_grid();

}  // namespace sweepwright::grid
