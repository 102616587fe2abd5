// The option --bbox: ground between parallels and meridians.
#pragma once

#include <string_view>

#include "sweepwright/grid/lat_lon_box.hpp"

namespace sweepwright::cli {

/// `WEST,SOUTH,EAST,NORTH` in degrees.
grid::LatLonBox parse_box(std::string_view text);

}  // namespace sweepwright::cli
