// The map of coverage as flown: the ground shaded by POD, the tracks, and the holes numbered.
//
// Conventions: as the other maps (map.hpp). Dark ground was searched well, pale ground was not.
//   Holes have a dashed edge and their number, 1 the largest, in them or beside, where there is
//   room for it. Rasters finer than the paper are shown by means of squares of cells. Cells of a
//   named grid carry name and POD where there is room.
// Domain: paper of at least kLeastMapSize.
// Promises: P1 all that is drawn lies on the paper; P2 same report, same drawing
//   (coverage_writer_test.cpp).
#pragma once

#include "sweepwright/formats/coverage_writer.hpp"
#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

/// Throws Error(value) for too small a paper.
Drawing draw_coverage_map(const CoverageReport& report, PaperSize size);

}  // namespace sweepwright::formats
