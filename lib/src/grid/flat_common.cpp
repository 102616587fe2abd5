#include "grid/flat_common.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

namespace sweepwright::grid {
namespace {

namespace bg = boost::geometry;

using Point = bg::model::d2::point_xy<double>;
using Polygon = bg::model::polygon<Point, /*ClockWise=*/false, /*Closed=*/false>;

Polygon to_boost(const FlatPolygon& polygon) {
  Polygon out;
  for (const FlatPoint& p : polygon.outer) out.outer().emplace_back(p.x, p.y);
  for (const FlatRing& hole : polygon.holes) {
    out.inners().emplace_back();
    for (const FlatPoint& p : hole) out.inners().back().emplace_back(p.x, p.y);
  }
  return out;
}

FlatRing from_boost(const Polygon::ring_type& ring) {
  FlatRing out;
  for (const Point& p : ring) out.push_back({p.x(), p.y()});
  if (out.size() > 1 && out.front() == out.back()) out.pop_back();
  return out;
}

}  // namespace

FlatRegion common(const FlatRegion& a, const FlatRegion& b) {
  FlatRegion out;
  for (const FlatPolygon& one : a) {
    for (const FlatPolygon& other : b) {
      bg::model::multi_polygon<Polygon> shared;
      bg::intersection(to_boost(one), to_boost(other), shared);
      for (const Polygon& polygon : shared) {
        FlatPolygon piece{from_boost(polygon.outer()), {}};
        for (const auto& inner : polygon.inners()) piece.holes.push_back(from_boost(inner));
        out.push_back(piece);
      }
    }
  }
  return out;
}

}  // namespace sweepwright::grid
