// Straight lines on a LocalPlane: distances, crossings and what they enclose; private to the
// pattern room.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/position/geodesic.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::pattern {

std::vector<PlanePoint> to_plane(const Path& path, const LocalPlane& plane);

/// The point that share of the way from one point to another.
PlanePoint between(PlanePoint from, PlanePoint to, double share);

/// From a point to the nearest point of the line between two others.
Length distance(PlanePoint point, PlanePoint from, PlanePoint to);

/// From a place to the nearest place of the shortest line between two others, on the ground.
Length distance_to_leg(Position place, Position from, Position to);

/// The share of the way from `a` to `b` at which the line from `c` to `d` crosses or touches it;
/// none for lines side by side.
std::optional<double> crossing(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d);

/// All such shares with the lines, 0 and 1 with them, in rising order, none twice.
std::vector<double> crossings(PlanePoint a, PlanePoint b,
                              const std::vector<std::vector<PlanePoint>>& lines);

/// True in the region; on its edge either.
bool is_inside(PlanePoint point, const PlaneRegion& region);

}  // namespace sweepwright::pattern
