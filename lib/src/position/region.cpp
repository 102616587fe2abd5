#include "sweepwright/position/region.hpp"

#include <fmt/format.h>

#include <GeographicLib/PolygonArea.hpp>
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <optional>

#include "position/plane_shapes.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright {
namespace {

/// Corners closer than this are one corner.
constexpr Length kSameCorner = Length::metres(0.01);
/// A region smaller than this has no area worth the name.
constexpr double kLeastAreaSquareMetres = 1;

bool same_corner(Position a, Position b) {
  return a == b || (std::abs((a.latitude() - b.latitude()).degrees()) < 1e-5 &&
                    geodesic(a, b).length < kSameCorner);
}

Ring tidy(const Ring& ring) {
  Ring out;
  for (const Position& p : ring) {
    if (out.empty() || !same_corner(out.back(), p)) out.push_back(p);
  }
  while (out.size() > 1 && same_corner(out.back(), out.front())) out.pop_back();
  if (out.size() < 3) {
    throw Error(
        ErrorCode::geometry,
        fmt::format("an area has {} different corner{}", out.size(), out.size() == 1 ? "" : "s"),
        "give at least three corners, in order round the area");
  }
  return out;
}

double cross(const shapes::Point& o, const shapes::Point& a, const shapes::Point& b) {
  return (a.x() - o.x()) * (b.y() - o.y()) - (a.y() - o.y()) * (b.x() - o.x());
}

/// Where two edges cross, if they do.
std::optional<shapes::Point> crossing(const shapes::Point& a, const shapes::Point& b,
                                      const shapes::Point& c, const shapes::Point& d) {
  const double at_c = cross(a, b, c);
  const double at_d = cross(a, b, d);
  if ((at_c > 0) == (at_d > 0) || (cross(c, d, a) > 0) == (cross(c, d, b) > 0)) return std::nullopt;
  const double share = at_c / (at_c - at_d);
  return shapes::Point(c.x() + share * (d.x() - c.x()), c.y() + share * (d.y() - c.y()));
}

/// A place where two edges that are not neighbours meet, for the message.
template <typename RingType>
std::optional<shapes::Point> crossing(const RingType& ring) {
  const std::size_t edges = ring.size() - 1;
  const auto low = [&](std::size_t i) { return std::min(ring[i].x(), ring[i + 1].x()); };
  const auto high = [&](std::size_t i) { return std::max(ring[i].x(), ring[i + 1].x()); };
  std::vector<std::size_t> from_left(edges);
  std::iota(from_left.begin(), from_left.end(), std::size_t{0});
  std::sort(from_left.begin(), from_left.end(),
            [&](std::size_t i, std::size_t j) { return low(i) < low(j); });
  for (std::size_t m = 0; m < edges; ++m) {
    for (std::size_t n = m + 1; n < edges && low(from_left[n]) <= high(from_left[m]); ++n) {
      const auto [i, j] = std::minmax(from_left[m], from_left[n]);
      if (j == i + 1 || (i == 0 && j == edges - 1)) continue;
      if (const auto at = crossing(ring[i], ring[i + 1], ring[j], ring[j + 1])) return at;
    }
  }
  return std::nullopt;
}

void require_valid(const shapes::Polygon& polygon, const LocalPlane& plane) {
  const auto ground = [&](const shapes::Point& p) {
    return format_position(plane.to_position(shapes::from_point(p)), Notation::degrees_minutes, 2);
  };
  if (std::abs(shapes::bg::area(polygon)) < kLeastAreaSquareMetres) {
    const std::optional<shapes::Point> at = crossing(polygon.outer());
    throw Error(ErrorCode::geometry,
                at ? fmt::format("the edges of the area cross near {}", ground(*at))
                   : std::string("the area is empty: all its corners lie on one line"),
                "list the corners in order round the area");
  }
  std::string reason;
  if (shapes::bg::is_valid(polygon, reason)) return;
  std::optional<shapes::Point> at = crossing(polygon.outer());
  for (std::size_t i = 0; !at && i < polygon.inners().size(); ++i)
    at = crossing(polygon.inners()[i]);
  if (at) {
    throw Error(ErrorCode::geometry,
                fmt::format("the edges of the area cross near {}", ground(*at)),
                "list the corners in order round the area");
  }
  throw Error(ErrorCode::geometry,
              polygon.inners().empty()
                  ? "the edges of the area touch each other or turn back on themselves"
                  : "a hole of the area crosses its edge or another hole",
              "list the corners in order round the area, each once");
}

double signed_area(const Ring& ring) {
  GeographicLib::PolygonArea polygon(GeographicLib::Geodesic::WGS84());
  for (const Position& p : ring) polygon.AddPoint(p.latitude().degrees(), p.longitude().degrees());
  double perimeter = 0;
  double square_metres = 0;
  polygon.Compute(/*reverse=*/false, /*sign=*/true, perimeter, square_metres);
  return square_metres;
}

/// How far the region reaches from a place.
Length radius(const Region& region, Position centre) {
  Length farthest;
  for (const Polygon& polygon : region.polygons) {
    for (const Position& corner : polygon.outer) {
      farthest = std::max(farthest, geodesic(centre, corner).length);
    }
  }
  return farthest;
}

std::array<double, 3> unit_vector(Position p) {
  const double latitude = p.latitude().radians();
  const double longitude = p.longitude().radians();
  return {std::cos(latitude) * std::cos(longitude), std::cos(latitude) * std::sin(longitude),
          std::sin(latitude)};
}

}  // namespace

Position middle(const Region& region) {
  // The mean of the edges' middles, each weighted with its length: extra corners change nothing.
  std::array<double, 3> sum{};
  for (const Polygon& polygon : region.polygons) {
    for (std::size_t i = 0; i < polygon.outer.size(); ++i) {
      const auto a = unit_vector(polygon.outer[i]);
      const auto b = unit_vector(polygon.outer[(i + 1) % polygon.outer.size()]);
      const double chord = std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
      for (std::size_t k = 0; k < 3; ++k) sum[k] += (a[k] + b[k]) * chord;
    }
  }
  const double horizontal = std::hypot(sum[0], sum[1]);
  if (std::hypot(horizontal, sum[2]) < 1e-12) {
    throw Error(ErrorCode::geometry, "the area has no middle: it is empty or goes round the Earth");
  }
  return Position::at(Angle::radians(std::atan2(sum[2], horizontal)),
                      Angle::radians(std::atan2(sum[1], sum[0])));
}

LocalPlane local_plane(const Region& region, TrueDirection axis) {
  return LocalPlane(middle(region), axis);
}

Region make_region(std::vector<Polygon> polygons) {
  if (polygons.empty()) throw Error(ErrorCode::geometry, "there is no area: no polygon was given");
  Region region;
  for (const Polygon& polygon : polygons) {
    Polygon clean{tidy(polygon.outer), {}};
    for (const Ring& hole : polygon.holes) clean.holes.push_back(tidy(hole));
    region.polygons.push_back(clean);
  }

  const LocalPlane plane = local_plane(region);
  shapes::MultiPolygon whole;
  for (shapes::Polygon& shape : [&] {
         shapes::MultiPolygon laid = shapes::to_shapes(to_plane(region, plane));
         return laid;
       }()) {
    shapes::Polygon polygon = shape;
    shapes::bg::correct(polygon);
    require_valid(polygon, plane);
    shapes::MultiPolygon common;
    shapes::bg::intersection(whole, polygon, common);
    if (shapes::bg::area(common) > kLeastAreaSquareMetres) {
      throw Error(ErrorCode::geometry, "two polygons of the area overlap",
                  "draw them as one polygon, or apart");
    }
    // Parts that only touch (an area cut at the antimeridian, say) become one.
    shapes::MultiPolygon joined;
    shapes::bg::union_(whole, polygon, joined);
    whole = joined;
  }
  if (region.polygons.size() > 1) return to_region(shapes::from_shapes(whole), plane);

  // One polygon: its corners stay as they were given, to the last digit.
  const auto turn_round = [](Ring& ring, bool counterclockwise) {
    if ((signed_area(ring) > 0) != counterclockwise) std::reverse(ring.begin(), ring.end());
  };
  turn_round(region.polygons[0].outer, true);
  for (Ring& hole : region.polygons[0].holes) turn_round(hole, false);
  return region;
}

Area area(const Region& region) {
  double square_metres = 0;
  for (const Polygon& polygon : region.polygons) {
    square_metres += signed_area(polygon.outer);
    for (const Ring& hole : polygon.holes) square_metres += signed_area(hole);
  }
  return Area::square_metres(square_metres);
}

Area common_area(const Region& a, const Region& b) {
  const Position middle_a = middle(a);
  const Position middle_b = middle(b);
  if (geodesic(middle_a, middle_b).length > radius(a, middle_a) + radius(b, middle_b)) return {};
  Region both = a;
  both.polygons.insert(both.polygons.end(), b.polygons.begin(), b.polygons.end());
  const LocalPlane plane = local_plane(both);
  shapes::MultiPolygon common;
  shapes::bg::intersection(shapes::to_shapes(to_plane(a, plane)),
                           shapes::to_shapes(to_plane(b, plane)), common);
  return area(to_region(shapes::from_shapes(common), plane));
}

bool contains(const Region& region, Position position) {
  const LocalPlane plane = local_plane(region);
  if (geodesic(plane.centre(), position).length > kLocalPlaneReach) return false;
  const shapes::MultiPolygon whole = shapes::to_shapes(to_plane(region, plane));
  const shapes::Point point = shapes::to_point(plane.to_plane(position));
  return shapes::bg::covered_by(point, whole) || shapes::bg::distance(point, whole) < 1e-3;
}

Ring main_corners(const Ring& ring, Length tolerance) {
  if (ring.size() <= 3) return ring;
  const LocalPlane plane = local_plane(Region{{Polygon{ring, {}}}});
  std::vector<shapes::Point> corners;
  for (const Position& p : ring) corners.push_back(shapes::to_point(plane.to_plane(p)));
  // The corner farthest from the middle is a main corner whatever the tolerance: start there.
  const auto far = std::max_element(
      corners.begin(), corners.end(), [](const shapes::Point& a, const shapes::Point& b) {
        return a.x() * a.x() + a.y() * a.y() < b.x() * b.x() + b.y() * b.y();
      });
  const auto first = static_cast<std::size_t>(far - corners.begin());
  shapes::Line line;
  for (std::size_t i = 0; i <= corners.size(); ++i) {
    line.push_back(corners[(first + i) % corners.size()]);
  }
  shapes::Line simple;
  shapes::bg::simplify(line, simple, tolerance.metres());
  Ring out;
  std::size_t kept = 0;
  for (std::size_t i = 0; i < corners.size() && kept + 1 < simple.size(); ++i) {
    const std::size_t index = (first + i) % corners.size();
    if (simple[kept].x() == corners[index].x() && simple[kept].y() == corners[index].y()) {
      out.push_back(ring[index]);
      ++kept;
    }
  }
  return out.size() < 3 ? ring : out;
}

}  // namespace sweepwright
