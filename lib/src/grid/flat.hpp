// Polygons in a plane whose axes point east (x) and north (y): longitude and latitude in degrees,
// or metres of a projection. Private to the grid room.
//
// Conventions: rings are not closed; outer rings run counterclockwise, holes clockwise.
#pragma once

#include <vector>

#include "sweepwright/grid/lat_lon_box.hpp"
#include "sweepwright/position/plotting.hpp"

namespace sweepwright::grid {

struct FlatPoint {
  double x;
  double y;
  bool operator==(const FlatPoint&) const = default;
};
using FlatRing = std::vector<FlatPoint>;

struct FlatPolygon {
  FlatRing outer;
  std::vector<FlatRing> holes;
};
using FlatRegion = std::vector<FlatPolygon>;

/// The region as maps draw it, in degrees, within 1 m.
FlatRegion flat(const Region& region);
FlatRegion flat(const std::vector<PlotPolygon>& polygons);
/// A box in degrees, in two parts when it crosses the antimeridian.
FlatRegion flat(const LatLonBox& box);

/// A region whose edges, drawn straight in longitude and latitude, are those of the polygons:
/// corners are added until the shortest lines between them are within half a metre.
Region from_flat(const FlatRegion& region);

/// The same for polygons whose edges are shortest lines already, but for those along parallels:
/// these get corners until they are within 5 cm.
Region from_flat_parallels(const FlatRegion& region);

/// The least box round the polygons; `low` is greater than `high` when there are none.
struct FlatBounds {
  FlatPoint low;
  FlatPoint high;
};
FlatBounds bounds(const FlatRegion& region);

/// The side of a line x = at or y = at that is kept.
enum class Keep { west, east, south, north };

/// The part of the region on one side of a line. Corners on the line are not moved.
FlatRegion cut(const FlatRegion& region, Keep side, double at);
/// The part within a box in the same units.
FlatRegion cut(const FlatRegion& region, const FlatBounds& box);

/// True strictly inside; on the outline it may be either.
bool inside(const FlatRegion& region, FlatPoint point);

/// Area on the ellipsoid of polygons in degrees whose edges are straight in longitude and latitude.
/// Accuracy: 1e-10 of the area for edges up to 15 degrees (grid_clip_test.cpp).
Area area_of_degrees(const FlatRegion& region);

}  // namespace sweepwright::grid
