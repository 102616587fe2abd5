// The outline of cells that are joined by their sides; private to the debrief room.
#pragma once

#include <cstddef>
#include <vector>

#include "sweepwright/debrief/coverage_frame.hpp"

namespace sweepwright::debrief {

/// `cells`: numbers, rising, each joined to the others over shared sides.
Polygon outline_of_cells(const CoverageFrame& frame, const std::vector<std::size_t>& cells);

}  // namespace sweepwright::debrief
