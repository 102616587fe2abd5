// Geometry as the pieces that GeoJSON and KML draw; private to the formats room.
//
// Both formats want straight lines in longitude and latitude, cut at the antimeridian. Points are
// rounded to the formats' decimals here, and those that fall together are dropped.
#pragma once

#include <array>
#include <vector>

#include "sweepwright/formats/geometry.hpp"
#include "sweepwright/position/plotting.hpp"

namespace sweepwright::formats {

/// Throws Error(value) for a path of fewer than two places.
std::vector<PlotLine> lines_to_draw(const Path& path);

std::vector<PlotPolygon> polygons_to_draw(const Region& region);

/// A box that does not cross the antimeridian: west below east.
struct FlatBox {
  Angle south;
  Angle north;
  Angle west;
  Angle east;
};

/// The box, or its two parts when it crosses the antimeridian.
struct FlatBoxes {
  std::array<FlatBox, 2> boxes;
  std::size_t count;
};

FlatBoxes flat_boxes(const grid::LatLonBox& box);

/// Pieces that a parallel of the box is cut into so that shortest lines between the cuts stay
/// within kPlottingTolerance of it.
int pieces_of_parallel(const FlatBox& box, Angle latitude);

}  // namespace sweepwright::formats
