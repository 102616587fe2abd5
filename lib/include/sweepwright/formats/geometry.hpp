// Geometry: what a feature of an overlay shows on the ground.
#pragma once

#include <variant>

#include "sweepwright/grid/lat_lon_box.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::formats {

/// Nothing, a place, a line along geodesics, an area, or the ground between parallels and meridians
/// (a million of which are cheap).
using Geometry = std::variant<std::monostate, Position, Path, Region, grid::LatLonBox>;

}  // namespace sweepwright::formats
