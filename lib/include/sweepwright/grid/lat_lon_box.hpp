// LatLonBox: the ground between two parallels and two meridians.
//
// Conventions: west of the box to east of the box; `west` greater than `east` means that the box
//   crosses the antimeridian. `east` is 180 where a box ends there, and `west` is -180.
// Domain: latitudes -90 to 90, longitudes -180 to 180.
// Accuracy: areas of boxes up to 15 degrees high to 1e-11 of their size (area_test.cpp, against
//   GeographicLib).
// Source: area element M N cos(latitude) with the radii of curvature M and N [J. P. Snyder, Map
//   Projections: A Working Manual, USGS PP 1395 (1987), equations 4-18 to 4-20].
#pragma once

#include "sweepwright/position/region.hpp"

namespace sweepwright::grid {

struct LatLonBox {
  Angle south;
  Angle north;
  Angle west;
  Angle east;
  bool operator==(const LatLonBox&) const = default;
};

/// Throws Error(value) for limits outside the domain, Error(geometry) for a box without area.
void check(const LatLonBox& box);

/// How far the box reaches in longitude, in (0, 360] degrees.
Angle width(const LatLonBox& box);

/// The place half way between the limits.
Position centre(const LatLonBox& box);

/// Area on the ellipsoid.
Area area(const LatLonBox& box);

/// The box as a region: its parallels get corners until the shortest lines between them are within
/// half a metre. Throws Error(geometry) for a box 180 degrees wide or more.
Region outline(const LatLonBox& box);

}  // namespace sweepwright::grid
