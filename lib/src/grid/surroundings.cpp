#include "grid/surroundings.hpp"

#include <algorithm>
#include <cmath>

#include "sweepwright/position/geodesic.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::grid {
namespace {

double distance_to_segment(PlanePoint a, PlanePoint b) {
  const double ax = a.right.metres();
  const double ay = a.up.metres();
  const double dx = b.right.metres() - ax;
  const double dy = b.up.metres() - ay;
  const double squared = dx * dx + dy * dy;
  const double share = squared == 0 ? 0 : std::clamp(-(ax * dx + ay * dy) / squared, 0.0, 1.0);
  return std::hypot(ax + share * dx, ay + share * dy);
}

/// The cell blown up round its label point until every edge has moved out by a metre.
Region enlarged(const Cell& cell) {
  const LocalPlane plane(label_point(cell));
  PlaneRegion region = to_plane(outline(cell), plane);
  double nearest = kLocalPlaneReach.metres();
  for (const PlanePolygon& polygon : region.polygons) {
    for (std::size_t i = 0; i < polygon.outer.size(); ++i) {
      nearest = std::min(
          nearest,
          distance_to_segment(polygon.outer[i], polygon.outer[(i + 1) % polygon.outer.size()]));
    }
  }
  const double factor = 1 + 1 / std::max(nearest, 1.0);
  for (PlanePolygon& polygon : region.polygons) {
    for (PlanePoint& p : polygon.outer) p = {p.right * factor, p.up * factor};
  }
  return to_region(region, plane);
}

}  // namespace

std::vector<Cell> surroundings(const Grid& grid, const Cell& cell) {
  struct Found {
    double bearing;
    Cell cell;
  };
  std::vector<Found> found;
  const Position middle = label_point(cell);
  grid.visit(enlarged(cell), cell.level, Selection::touching, [&](const Cell& other) {
    if (other.name == cell.name) return;
    // North comes first although its bearing may be 359: the eighth round it starts the circle.
    const double track = geodesic(middle, label_point(other)).start_track.degrees();
    found.push_back({std::fmod(track + 22.5, 360), other});
  });
  std::sort(found.begin(), found.end(),
            [](const Found& a, const Found& b) { return a.bearing < b.bearing; });
  std::vector<Cell> cells;
  for (Found& each : found) cells.push_back(std::move(each.cell));
  return cells;
}

}  // namespace sweepwright::grid
