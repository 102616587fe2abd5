#include "grid/flat.hpp"

#include <GeographicLib/Constants.hpp>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace sweepwright::grid {
namespace {

constexpr Length kDrawn = Length::metres(0.5);
constexpr double kAlongParallel = 0.05;  // metres

/// Area between the equator and a latitude, for each radian of longitude [integral of M N cos].
double area_to_equator(double latitude_degrees) {
  const double a = GeographicLib::Constants::WGS84_a();
  const double f = GeographicLib::Constants::WGS84_f();
  const double e2 = f * (2 - f);
  const double e = std::sqrt(e2);
  const double sine = std::sin(latitude_degrees / kDegreesPerRadian);
  return a * a * (1 - e2) / 2 * (sine / (1 - e2 * sine * sine) + std::atanh(e * sine) / e);
}

/// Area between an edge and the equator; Gauss's rule with three points along the edge.
double area_under(FlatPoint from, FlatPoint to) {
  if (from.x == to.x) return 0;
  constexpr std::array<double, 3> kPoints = {-0.7745966692414834, 0, 0.7745966692414834};
  constexpr std::array<double, 3> kWeights = {5.0 / 18, 8.0 / 18, 5.0 / 18};
  double mean = 0;
  for (std::size_t i = 0; i < kPoints.size(); ++i) {
    const double y = (from.y + to.y) / 2 + (to.y - from.y) / 2 * kPoints[i];
    mean += kWeights[i] * area_to_equator(y);
  }
  return mean * (to.x - from.x) / kDegreesPerRadian;
}

/// Counterclockwise rings are positive.
double area_of_ring(const FlatRing& ring) {
  double sum = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    sum -= area_under(ring[i], ring[(i + 1) % ring.size()]);
  return sum;
}

FlatRing flat_ring(const PlotLine& line) {
  FlatRing ring;
  for (const PlotPoint& p : line) ring.push_back({p.longitude.degrees(), p.latitude.degrees()});
  if (ring.size() > 1 && ring.front() == ring.back()) ring.pop_back();
  return ring;
}

Ring positions(const FlatRing& ring) {
  Ring out;
  for (const FlatPoint& p : ring) {
    out.push_back(Position::at(Angle::degrees(p.y), Angle::degrees(p.x)));
  }
  return out;
}

template <typename ToRing>
Region region_of(const FlatRegion& flat_region, ToRing to_ring) {
  Region region;
  for (const FlatPolygon& polygon : flat_region) {
    Polygon out{to_ring(polygon.outer), {}};
    for (const FlatRing& hole : polygon.holes) out.holes.push_back(to_ring(hole));
    region.polygons.push_back(std::move(out));
  }
  return region;
}

/// In how many pieces a parallel must fall for shortest lines to keep within kAlongParallel: the
/// shortest line rises R dl^2 sin(latitude) cos(latitude) / 8 above the middle of a piece.
int pieces_of_parallel(FlatPoint a, FlatPoint b) {
  const double latitude = a.y / kDegreesPerRadian;
  const double span = (b.x - a.x) / kDegreesPerRadian;
  const double rise = kWgs84EquatorialRadiusMetres * span * span *
                      std::abs(std::sin(latitude) * std::cos(latitude)) / 8;
  return std::max(1, static_cast<int>(std::ceil(std::sqrt(rise / kAlongParallel))));
}

bool crosses_eastward(const FlatRing& ring, FlatPoint point) {
  bool odd = false;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const FlatPoint a = ring[i];
    const FlatPoint b = ring[(i + 1) % ring.size()];
    if ((a.y <= point.y) == (b.y <= point.y)) continue;
    if (a.x + (b.x - a.x) * ((point.y - a.y) / (b.y - a.y)) > point.x) odd = !odd;
  }
  return odd;
}

}  // namespace

FlatRegion flat(const std::vector<PlotPolygon>& polygons) {
  FlatRegion region;
  for (const PlotPolygon& polygon : polygons) {
    FlatPolygon out{flat_ring(polygon.outer), {}};
    for (const PlotLine& hole : polygon.holes) out.holes.push_back(flat_ring(hole));
    region.push_back(out);
  }
  return region;
}

FlatRegion flat(const Region& region) {
  return flat(plotted(region));
}

FlatRegion flat(const LatLonBox& box) {
  const double south = box.south.degrees();
  const double north = box.north.degrees();
  const auto part = [=](Angle west, Angle east) {
    return FlatPolygon{{{west.degrees(), south},
                        {east.degrees(), south},
                        {east.degrees(), north},
                        {west.degrees(), north}},
                       {}};
  };
  if (box.west < box.east) return {part(box.west, box.east)};
  FlatRegion parts;
  if (box.west.degrees() < 180) parts.push_back(part(box.west, Angle::degrees(180)));
  if (box.east.degrees() > -180) parts.push_back(part(Angle::degrees(-180), box.east));
  return parts;
}

Region from_flat(const FlatRegion& region) {
  return region_of(
      region, [](const FlatRing& ring) { return from_plotted_edges(positions(ring), kDrawn); });
}

Region from_flat_parallels(const FlatRegion& region) {
  return region_of(region, [](const FlatRing& ring) {
    FlatRing out;
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const FlatPoint a = ring[i];
      const FlatPoint b = ring[(i + 1) % ring.size()];
      const int pieces = a.y == b.y ? pieces_of_parallel(a, b) : 1;
      for (int k = 0; k < pieces; ++k) out.push_back({a.x + (b.x - a.x) * k / pieces, a.y});
    }
    return positions(out);
  });
}

FlatBounds bounds(const FlatRegion& region) {
  constexpr double kFar = std::numeric_limits<double>::infinity();
  FlatBounds box{{kFar, kFar}, {-kFar, -kFar}};
  for (const FlatPolygon& polygon : region) {
    for (const FlatPoint& p : polygon.outer) {
      box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
      box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
    }
  }
  return box;
}

bool inside(const FlatRegion& region, FlatPoint point) {
  bool odd = false;
  for (const FlatPolygon& polygon : region) {
    odd ^= crosses_eastward(polygon.outer, point);
    for (const FlatRing& hole : polygon.holes) odd ^= crosses_eastward(hole, point);
  }
  return odd;
}

Area area_of_degrees(const FlatRegion& region) {
  double square_metres = 0;
  for (const FlatPolygon& polygon : region) {
    square_metres += area_of_ring(polygon.outer);
    for (const FlatRing& hole : polygon.holes) square_metres += area_of_ring(hole);
  }
  return Area::square_metres(square_metres);
}

}  // namespace sweepwright::grid
