#include "plan/leaves_sector.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sweepwright/flight/flown_path.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::plan {
namespace {

/// From a point to the nearest point of the line between two others.
Length distance_to_edge(PlanePoint point, PlanePoint from, PlanePoint to) {
  const double along_right = (to.right - from.right).metres();
  const double along_up = (to.up - from.up).metres();
  const double right = (point.right - from.right).metres();
  const double up = (point.up - from.up).metres();
  const double squared = along_right * along_right + along_up * along_up;
  const double share =
      squared > 0 ? std::clamp((right * along_right + up * along_up) / squared, 0.0, 1.0) : 0;
  return Length::metres(std::hypot(right - share * along_right, up - share * along_up));
}

Length distance_to_region(PlanePoint point, const PlaneRegion& region) {
  Length least = Length::metres(std::numeric_limits<double>::max());
  for (const PlanePolygon& polygon : region.polygons) {
    for (std::size_t i = 0; i < polygon.outer.size(); ++i) {
      const PlanePoint next = polygon.outer[(i + 1) % polygon.outer.size()];
      least = std::min(least, distance_to_edge(point, polygon.outer[i], next));
    }
  }
  return least;
}

}  // namespace

std::optional<Outside> farthest_outside(const flight::FlownPattern& flown, const Region& sector) {
  const LocalPlane plane = local_plane(sector);
  const PlaneRegion ground = to_plane(sector, plane);
  std::optional<Outside> farthest;
  const auto look_at = [&](const std::vector<flight::PathPoint>& points) {
    for (const flight::PathPoint& point : points) {
      if (contains(sector, point.position)) continue;
      const Length away = distance_to_region(plane.to_plane(point.position), ground);
      if (away > kSteering && (!farthest || away > farthest->distance)) {
        farthest = Outside{away, point.position};
      }
    }
  };
  const std::vector<flight::FlownLegPath> paths = flight::flown_paths(flown);
  for (std::size_t i = 0; i < paths.size(); ++i) {
    if (!flown.legs[i].searching) continue;
    look_at(paths[i].straight);
    // The last turn is the one for home.
    if (i + 1 < paths.size() && flown.legs[i + 1].searching) look_at(paths[i].turn);
  }
  return farthest;
}

}  // namespace sweepwright::plan
