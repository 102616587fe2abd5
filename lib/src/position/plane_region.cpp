#include "sweepwright/position/plane_region.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "position/plane_shapes.hpp"

namespace sweepwright {
namespace shapes {
namespace {

template <typename RingOut>
void add_ring(const PlaneRing& ring, RingOut& out) {
  for (const PlanePoint& p : ring) out.push_back(to_point(p));
  if (!ring.empty()) out.push_back(to_point(ring.front()));
}

template <typename RingIn>
PlaneRing from_ring(const RingIn& ring) {
  PlaneRing out;
  for (std::size_t i = 0; i + 1 < ring.size(); ++i) out.push_back(from_point(ring[i]));
  return out;
}

}  // namespace

MultiPolygon to_shapes(const PlaneRegion& region) {
  MultiPolygon shapes;
  for (const PlanePolygon& polygon : region.polygons) {
    Polygon shape;
    add_ring(polygon.outer, shape.outer());
    for (const PlaneRing& hole : polygon.holes) {
      shape.inners().emplace_back();
      add_ring(hole, shape.inners().back());
    }
    shapes.push_back(shape);
  }
  return shapes;
}

PlaneRegion from_shapes(const MultiPolygon& shapes) {
  PlaneRegion region;
  for (const Polygon& shape : shapes) {
    PlanePolygon polygon{from_ring(shape.outer()), {}};
    for (const auto& inner : shape.inners()) polygon.holes.push_back(from_ring(inner));
    region.polygons.push_back(polygon);
  }
  return region;
}

}  // namespace shapes

namespace {

/// Corners closer than this are one corner; far below anything a crew can tell apart.
constexpr double kSameCornerMetres = 1e-3;

template <typename Function>
void for_each_ring(PlaneRegion& region, Function f) {
  for (PlanePolygon& polygon : region.polygons) {
    f(polygon.outer);
    for (PlaneRing& hole : polygon.holes) f(hole);
  }
}

template <typename Function>
void for_each_ring(const PlaneRegion& region, Function f) {
  for (const PlanePolygon& polygon : region.polygons) {
    f(polygon.outer);
    for (const PlaneRing& hole : polygon.holes) f(hole);
  }
}

PlanePoint swapped(PlanePoint p) {
  return {p.up, p.right};
}

/// The region mirrored at the diagonal, so that one cut serves both axes.
PlaneRegion swapped(PlaneRegion region) {
  for_each_ring(region, [](PlaneRing& ring) {
    for (PlanePoint& p : ring) p = swapped(p);
    std::reverse(ring.begin(), ring.end());
  });
  return region;
}

/// Where the edge a-b meets the line right = `at`; the same numbers whichever way the edge runs.
PlanePoint meeting(PlanePoint a, PlanePoint b, Length at) {
  if (b.right < a.right) std::swap(a, b);
  const double share = (at - a.right) / (b.right - a.right);
  return {at, a.up + (b.up - a.up) * share};
}

bool crosses(PlanePoint a, PlanePoint b, Length at) {
  return (a.right < at && at < b.right) || (b.right < at && at < a.right);
}

PlaneRing with_meetings(const PlaneRing& ring, Length at) {
  PlaneRing out;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const PlanePoint& next = ring[(i + 1) % ring.size()];
    out.push_back(ring[i]);
    if (crosses(ring[i], next, at)) out.push_back(meeting(ring[i], next, at));
  }
  return out;
}

/// Moves every corner onto the corner of `known` that it stands for: clipping may disturb last
/// digits.
void snap(PlaneRegion& region, const std::vector<PlanePoint>& known) {
  for_each_ring(region, [&](PlaneRing& ring) {
    for (PlanePoint& p : ring) {
      const auto near =
          std::lower_bound(known.begin(), known.end(), p.right - Length::metres(kSameCornerMetres),
                           [](const PlanePoint& k, Length right) { return k.right < right; });
      for (auto k = near;
           k != known.end() && k->right <= p.right + Length::metres(kSameCornerMetres); ++k) {
        if (std::abs((k->up - p.up).metres()) <= kSameCornerMetres) {
          p = *k;
          break;
        }
      }
    }
  });
}

}  // namespace

PlaneRegion to_plane(const Region& region, const LocalPlane& plane) {
  const auto ring_to_plane = [&](const Ring& ring) {
    PlaneRing out;
    for (const Position& p : ring) out.push_back(plane.to_plane(p));
    return out;
  };
  PlaneRegion out;
  for (const Polygon& polygon : region.polygons) {
    PlanePolygon laid{ring_to_plane(polygon.outer), {}};
    for (const Ring& hole : polygon.holes) laid.holes.push_back(ring_to_plane(hole));
    out.polygons.push_back(laid);
  }
  return out;
}

Region to_region(const PlaneRegion& region, const LocalPlane& plane) {
  const auto ring_to_ground = [&](const PlaneRing& ring) {
    Ring out;
    for (const PlanePoint& p : ring) out.push_back(plane.to_position(p));
    return out;
  };
  Region out;
  for (const PlanePolygon& polygon : region.polygons) {
    Polygon ground{ring_to_ground(polygon.outer), {}};
    for (const PlaneRing& hole : polygon.holes) ground.holes.push_back(ring_to_ground(hole));
    out.polygons.push_back(ground);
  }
  return out;
}

Span extent_right(const PlaneRegion& region) {
  Span span{Length::metres(std::numeric_limits<double>::max()),
            Length::metres(std::numeric_limits<double>::lowest())};
  for_each_ring(region, [&](const PlaneRing& ring) {
    for (const PlanePoint& p : ring) {
      span.low = std::min(span.low, p.right);
      span.high = std::max(span.high, p.right);
    }
  });
  return span;
}

Span extent_up(const PlaneRegion& region) {
  return extent_right(swapped(region));
}

std::pair<PlaneRegion, PlaneRegion> split_right(const PlaneRegion& region, Length at) {
  PlaneRegion marked = region;
  std::vector<PlanePoint> known;
  for_each_ring(marked, [&](PlaneRing& ring) {
    ring = with_meetings(ring, at);
    known.insert(known.end(), ring.begin(), ring.end());
  });
  std::sort(known.begin(), known.end(),
            [](const PlanePoint& a, const PlanePoint& b) { return a.right < b.right; });

  const shapes::MultiPolygon whole = shapes::to_shapes(marked);
  const Span across = extent_right(region);
  const Span along = extent_up(region);
  const double margin = 1 + 0.01 * along.extent().metres();
  const auto part = [&](double low, double high) {
    shapes::MultiPolygon piece;
    if (low >= high) return PlaneRegion{};
    shapes::bg::intersection(
        whole,
        shapes::Box({low, along.low.metres() - margin}, {high, along.high.metres() + margin}),
        piece);
    PlaneRegion out = shapes::from_shapes(piece);
    snap(out, known);
    return out;
  };
  return {part(across.low.metres() - margin, at.metres()),
          part(at.metres(), across.high.metres() + margin)};
}

std::pair<PlaneRegion, PlaneRegion> split_up(const PlaneRegion& region, Length at) {
  auto [below, above] = split_right(swapped(region), at);
  return {swapped(std::move(below)), swapped(std::move(above))};
}

std::vector<Span> spans_in_strip(const PlaneRegion& region, Span strip_up) {
  const PlaneRegion strip = split_up(split_up(region, strip_up.low).second, strip_up.high).first;
  std::vector<Span> spans;
  for (const PlanePolygon& polygon : strip.polygons) {
    spans.push_back(extent_right(PlaneRegion{{polygon}}));
  }
  std::sort(spans.begin(), spans.end(), [](Span a, Span b) { return a.low < b.low; });
  std::vector<Span> merged;
  for (const Span& span : spans) {
    if (!merged.empty() && span.low <= merged.back().high) {
      merged.back().high = std::max(merged.back().high, span.high);
    } else {
      merged.push_back(span);
    }
  }
  return merged;
}

bool is_convex(const PlaneRegion& region, double share) {
  const shapes::MultiPolygon whole = shapes::to_shapes(region);
  shapes::Polygon hull;
  shapes::bg::convex_hull(whole, hull);
  return shapes::bg::area(whole) >= (1 - share) * shapes::bg::area(hull);
}

PlaneLine thinned(const PlaneLine& line, Length tolerance) {
  shapes::Line points;
  for (const PlanePoint& point : line) points.push_back(shapes::to_point(point));
  shapes::Line simple;
  shapes::bg::simplify(points, simple, tolerance.metres());
  PlaneLine out;
  for (const shapes::Point& point : simple) out.push_back(shapes::from_point(point));
  return out;
}

Angle long_axis(const PlaneRegion& region, Length tolerance) {
  shapes::MultiPolygon simple;
  shapes::bg::simplify(shapes::to_shapes(region), simple, tolerance.metres());
  shapes::Polygon hull;
  shapes::bg::convex_hull(simple.empty() ? shapes::to_shapes(region) : simple, hull);

  // The smallest rectangle has a side along one of the hull's edges.
  double best_area = std::numeric_limits<double>::max();
  double best_angle = 0;
  const auto& corners = hull.outer();
  for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
    const double x = corners[i + 1].x() - corners[i].x();
    const double y = corners[i + 1].y() - corners[i].y();
    const double edge = std::hypot(x, y);
    if (edge == 0) continue;
    double low_along = 0;
    double high_along = 0;
    double low_across = 0;
    double high_across = 0;
    for (const shapes::Point& p : corners) {
      const double px = p.x() - corners[i].x();
      const double py = p.y() - corners[i].y();
      const double along = (px * x + py * y) / edge;
      const double across = (py * x - px * y) / edge;
      low_along = std::min(low_along, along);
      high_along = std::max(high_along, along);
      low_across = std::min(low_across, across);
      high_across = std::max(high_across, across);
    }
    const double along = high_along - low_along;
    const double across = high_across - low_across;
    // An edge must be clearly better: opposite sides of a rectangle tie, and the first one stays.
    if (along * across < best_area * (1 - 1e-6)) {
      best_area = along * across;
      // Clockwise from `up`, as tracks are.
      best_angle = std::atan2(x, y) + (along >= across ? 0 : std::numbers::pi / 2);
    }
  }
  const double degrees = std::fmod(best_angle * kDegreesPerRadian + 360, 180.0);
  return Angle::degrees(degrees > 180 - 1e-6 ? 0 : degrees);
}

void share_corners(std::vector<PlaneRegion>& regions) {
  std::vector<PlanePoint> corners;
  for (const PlaneRegion& region : regions) {
    for_each_ring(region, [&](const PlaneRing& ring) {
      corners.insert(corners.end(), ring.begin(), ring.end());
    });
  }
  const auto insert_on_edge = [&](PlanePoint a, PlanePoint b, PlaneRing& out) {
    const double x = (b.right - a.right).metres();
    const double y = (b.up - a.up).metres();
    const double edge = std::hypot(x, y);
    std::vector<std::pair<double, PlanePoint>> found;
    for (const PlanePoint& c : corners) {
      const double px = (c.right - a.right).metres();
      const double py = (c.up - a.up).metres();
      const double along = (px * x + py * y) / edge;
      const double across = std::abs(py * x - px * y) / edge;
      if (across <= kSameCornerMetres && along > kSameCornerMetres &&
          along < edge - kSameCornerMetres) {
        found.emplace_back(along, c);
      }
    }
    std::sort(found.begin(), found.end(),
              [](const auto& p, const auto& q) { return p.first < q.first; });
    double last = -1;
    for (const auto& [along, corner] : found) {
      if (along - last > kSameCornerMetres) out.push_back(corner);
      last = along;
    }
  };
  for (PlaneRegion& region : regions) {
    for_each_ring(region, [&](PlaneRing& ring) {
      PlaneRing out;
      for (std::size_t i = 0; i < ring.size(); ++i) {
        out.push_back(ring[i]);
        insert_on_edge(ring[i], ring[(i + 1) % ring.size()], out);
      }
      ring = out;
    });
  }
}

}  // namespace sweepwright
