// The picture of an effort: where it goes, shaded by coverage, and how much each unit brings, as
// bars.
//
// Conventions: as the other maps (map.hpp). Without a plan each cell is shaded by its coverage and
//   carries it as a number; with a plan each unit's rectangle is, and carries callsign, coverage
//   and probability of success. The bars stand under the map: longest for the greatest effort, with
//   the search time.
// Domain: 1 to kMostCellsOnMap cells; paper of at least kLeastMapSize. The bars come on top of the
//   size asked for.
// Promises: P1 all that is drawn lies on the paper; P2 same report, same drawing
//   (effort_map_test.cpp).
#pragma once

#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/formats/effort_report.hpp"

namespace sweepwright::formats {

/// Throws Error(value) for too many cells or too small a paper.
Drawing draw_effort_map(const EffortReport& report, PaperSize size);

}  // namespace sweepwright::formats
