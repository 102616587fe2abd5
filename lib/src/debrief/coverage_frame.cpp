#include "sweepwright/debrief/coverage_frame.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::debrief {
namespace {

struct Box {
  Span right;
  Span up;
};

Box box_of(const Region& area, const LocalPlane& plane) {
  const PlaneRegion laid = to_plane(area, plane);
  const Box box{extent_right(laid), extent_up(laid)};
  const double right = std::max(-box.right.low.metres(), box.right.high.metres());
  const double up = std::max(-box.up.low.metres(), box.up.high.metres());
  if (std::hypot(right, up) > kCoverageReach.metres()) {
    throw Error(ErrorCode::geometry,
                fmt::format("the area reaches {:.0f} km from its middle, coverage can be reckoned "
                            "as far as {:.0f} km",
                            std::hypot(right, up) / 1000, kCoverageReach.kilometres()),
                "split the area, or give a smaller one");
  }
  return box;
}

std::size_t steps(Length extent, Length cell) {
  // What reaches a thousandth of a cell into the next one needs no row of its own.
  return static_cast<std::size_t>(std::max(1.0, std::ceil(extent / cell - 1e-3)));
}

/// Where the ring crosses the line up = `at`, along `right`, in cells of the frame.
void add_crossings(const PlaneRing& ring, const CoverageFrame& frame, Length at,
                   std::vector<double>& crossings) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const PlanePoint& a = ring[i];
    const PlanePoint& b = ring[(i + 1) % ring.size()];
    if ((a.up <= at) == (b.up <= at)) continue;
    const double share = (at - a.up) / (b.up - a.up);
    crossings.push_back((a.right + (b.right - a.right) * share - frame.corner.right) / frame.cell);
  }
}

}  // namespace

CoverageFrame coverage_frame(const Region& area, Length cell) {
  if (!(cell > Length())) {
    throw Error(ErrorCode::value,
                fmt::format("cells of {} m, expected more than 0", cell.metres()));
  }
  const LocalPlane plane = local_plane(area);
  const Box box = box_of(area, plane);
  const double columns = std::ceil(box.right.extent() / cell);
  const double rows = std::ceil(box.up.extent() / cell);
  if (!(columns * rows <= static_cast<double>(kMostCoverageCells))) {
    throw Error(ErrorCode::value,
                fmt::format("the area has {:.3g} cells of {:.3g} m, expected at most {}",
                            columns * rows, cell.metres(), kMostCoverageCells),
                "take larger cells or a smaller area");
  }
  CoverageFrame frame{
      plane, {}, cell, steps(box.right.extent(), cell), steps(box.up.extent(), cell)};
  frame.corner.right =
      (box.right.low + box.right.high - cell * static_cast<double>(frame.columns)) / 2;
  frame.corner.up = (box.up.low + box.up.high - cell * static_cast<double>(frame.rows)) / 2;
  return frame;
}

Length least_cell(const Region& area, std::size_t most) {
  const Box box = box_of(area, local_plane(area));
  const double right = box.right.extent().metres();
  const double up = box.up.extent().metres();
  // (right / cell + 1) (up / cell + 1) = most, so that rounding up cannot pass it.
  const double half = (right + up) / 2;
  const double free = std::max(1.0, static_cast<double>(most) - 1);
  return Length::metres((half + std::sqrt(half * half + free * right * up)) / free);
}

Position cell_centre(const CoverageFrame& frame, std::size_t cell) {
  const auto column = static_cast<double>(cell % frame.columns);
  const auto row = static_cast<double>(cell / frame.columns);
  return frame.plane.to_position({frame.corner.right + frame.cell * (column + 0.5),
                                  frame.corner.up + frame.cell * (row + 0.5)});
}

Region cell_outline(const CoverageFrame& frame, std::size_t cell) {
  const Length left = frame.corner.right + frame.cell * static_cast<double>(cell % frame.columns);
  const Length low = frame.corner.up + frame.cell * static_cast<double>(cell / frame.columns);
  const auto corner = [&](double right, double up) {
    return frame.plane.to_position({left + frame.cell * right, low + frame.cell * up});
  };
  return Region{{Polygon{{corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)}, {}}}};
}

std::vector<std::size_t> cells_inside(const CoverageFrame& frame, const Region& region) {
  const PlaneRegion laid = to_plane(region, frame.plane);
  std::vector<std::size_t> inside;
  std::vector<double> crossings;
  for (std::size_t row = 0; row < frame.rows; ++row) {
    const Length at = frame.corner.up + frame.cell * (static_cast<double>(row) + 0.5);
    crossings.clear();
    for (const PlanePolygon& polygon : laid.polygons) {
      add_crossings(polygon.outer, frame, at, crossings);
      for (const PlaneRing& hole : polygon.holes) add_crossings(hole, frame, at, crossings);
    }
    std::sort(crossings.begin(), crossings.end());
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
      const auto columns = static_cast<double>(frame.columns);
      const double first = std::clamp(std::ceil(crossings[i] - 0.5), 0.0, columns);
      const double last = std::clamp(std::ceil(crossings[i + 1] - 0.5), 0.0, columns);
      for (auto c = static_cast<std::size_t>(first); c < static_cast<std::size_t>(last); ++c) {
        inside.push_back(row * frame.columns + c);
      }
    }
  }
  return inside;
}

}  // namespace sweepwright::debrief
