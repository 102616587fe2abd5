// The common part of two polygons in a plane; apart from flat.hpp because it needs Boost.Geometry.
#pragma once

#include "grid/flat.hpp"

namespace sweepwright::grid {

FlatRegion common(const FlatRegion& a, const FlatRegion& b);

}  // namespace sweepwright::grid
