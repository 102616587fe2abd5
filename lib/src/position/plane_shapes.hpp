// Boost.Geometry's view of plane regions; private to the position room.
#pragma once

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::shapes {

namespace bg = boost::geometry;

using Point = bg::model::d2::point_xy<double>;
// Counterclockwise outer rings, closed: Boost's algorithms are best tested in this form.
using Polygon = bg::model::polygon<Point, /*ClockWise=*/false, /*Closed=*/true>;
using MultiPolygon = bg::model::multi_polygon<Polygon>;
using Line = bg::model::linestring<Point>;
using Box = bg::model::box<Point>;

inline Point to_point(PlanePoint p) {
  return {p.right.metres(), p.up.metres()};
}
inline PlanePoint from_point(const Point& p) {
  return {Length::metres(p.x()), Length::metres(p.y())};
}

MultiPolygon to_shapes(const PlaneRegion& region);
PlaneRegion from_shapes(const MultiPolygon& shapes);

}  // namespace sweepwright::shapes
