#include "formats/map_view.hpp"

#include <algorithm>

#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::formats {
namespace {

/// A little inside the plane's reach, so that rounding cannot carry a place over it.
constexpr Length kDrawnReach = kLocalPlaneReach * 0.995;

PlanePoint on_plane(const LocalPlane& plane, Position position) {
  const GeodesicLine line = geodesic(plane.centre(), position);
  if (line.length <= kDrawnReach) return plane.to_plane(position);
  return plane.to_plane(travel(plane.centre(), line.start_track, kDrawnReach).position);
}

}  // namespace

MapView::MapView(LocalPlane plane, const std::vector<Position>& shown, PaperBox frame,
                 PaperBox room)
    : plane_(plane), frame_(frame) {
  PlanePoint low = on_plane(plane, shown.front());
  PlanePoint high = low;
  for (const Position& position : shown) {
    const PlanePoint at = on_plane(plane, position);
    low = {std::min(low.right, at.right), std::min(low.up, at.up)};
    high = {std::max(high.right, at.right), std::max(high.up, at.up)};
  }
  const Length least = Length::metres(1);
  mm_per_metre_ = std::min(room.width_mm() / std::max(high.right - low.right, least).metres(),
                           room.height_mm() / std::max(high.up - low.up, least).metres());
  const PaperPoint centre = middle(room);
  origin_ = {centre.x_mm - on_paper_mm((low.right + high.right) / 2),
             centre.y_mm + on_paper_mm((low.up + high.up) / 2)};
}

PaperPoint MapView::to_paper(Position position) const {
  const PlanePoint at = on_plane(plane_, position);
  return {origin_.x_mm + on_paper_mm(at.right), origin_.y_mm - on_paper_mm(at.up)};
}

Position MapView::to_position(PaperPoint point) const {
  return plane_.to_position({Length::metres((point.x_mm - origin_.x_mm) / mm_per_metre_),
                             Length::metres((origin_.y_mm - point.y_mm) / mm_per_metre_)});
}

bool MapView::in_reach(Position position) const {
  return geodesic(plane_.centre(), position).length <= kDrawnReach;
}

PaperArea MapView::to_paper(const Region& region) const {
  PaperArea area;
  const auto add = [&](const Ring& ring) {
    area.emplace_back();
    for (const Position& corner : ring) area.back().push_back(to_paper(corner));
  };
  for (const Polygon& polygon : region.polygons) {
    add(polygon.outer);
    for (const Ring& hole : polygon.holes) add(hole);
  }
  return area;
}

std::vector<Position> corners(const Region& region) {
  std::vector<Position> all;
  for (const Polygon& polygon : region.polygons) {
    all.insert(all.end(), polygon.outer.begin(), polygon.outer.end());
  }
  return all;
}

}  // namespace sweepwright::formats
