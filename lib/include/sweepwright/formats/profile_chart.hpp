// Draws the profile of a line: the ground under it and beside it, the planned height, the
// clearance.
//
// Conventions: distance in nautical miles to the right, height in feet upwards (and metres on the
//   right-hand side). The dark shape is the highest ground that the line itself crosses, the
//   lighter one the highest in the corridor. The strip below tells the class of each stretch by
//   its label and its pattern, so that it can be read without colours. Ground that is not known is
//   hatched from bottom to top.
// Source: own work.
#pragma once

#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/formats/terrain_report.hpp"

namespace sweepwright::formats {

inline constexpr PaperSize kProfileSize{180, 105};

Drawing draw_profile(const TerrainReport& report, PaperSize size = kProfileSize);

}  // namespace sweepwright::formats
