#include "effort/plane_belief.hpp"

#include <algorithm>
#include <cmath>

#include "sweepwright/base/error.hpp"

namespace sweepwright::effort {
namespace {

constexpr std::size_t row_length(int pixels) {
  return static_cast<std::size_t>(pixels) + 1;
}

Box joined(const Box& a, const Box& b) {
  return {std::min(a.left, b.left), std::max(a.right, b.right), std::min(a.low, b.low),
          std::max(a.high, b.high)};
}

}  // namespace

Weight weight_of(std::span<const ProbableGround> belief) {
  const auto heaviest =
      std::max_element(belief.begin(), belief.end(),
                       [](const auto& a, const auto& b) { return a.probability < b.probability; });
  if (heaviest == belief.end() || !(heaviest->probability > 0)) {
    throw Error(ErrorCode::impossible,
                "no cell holds any probability: the belief lies wholly outside these cells",
                "take the cells round the datum");
  }
  const LocalPlane plane(middle(heaviest->ground));
  double total = 0;
  double right = 0;
  double up = 0;
  double right_right = 0;
  double right_up = 0;
  double up_up = 0;
  for (const ProbableGround& part : belief) {
    if (!(part.probability > 0)) continue;
    const PlanePoint place = plane.to_plane(middle(part.ground));
    const double x = place.right.metres();
    const double y = place.up.metres();
    total += part.probability;
    right += part.probability * x;
    up += part.probability * y;
    right_right += part.probability * x * x;
    right_up += part.probability * x * y;
    up_up += part.probability * y * y;
  }
  right /= total;
  up /= total;
  const double variance_right = right_right / total - right * right;
  const double variance_up = up_up / total - up * up;
  const double together = right_up / total - right * up;
  const Angle turn = Angle::radians(std::atan2(2 * together, variance_up - variance_right) / 2);
  const double whole = std::fmod(std::round(turn.degrees()) + 180, 180);
  return {plane.to_position({Length::metres(right), Length::metres(up)}),
          TrueDirection::degrees(whole)};
}

PlaneBelief::PlaneBelief(std::span<const ProbableGround> belief, const LocalPlane& plane) {
  for (const ProbableGround& part : belief) {
    if (part.probability > 0) cells_.push_back(plane_cell(part, plane));
  }
  raster_bounds_ = cells_.at(0).bounds;
  for (const PlaneCell& cell : cells_) raster_bounds_ = joined(raster_bounds_, cell.bounds);
  fill_raster();
  trim_bounds();
}

PlaneBelief::PlaneCell PlaneBelief::plane_cell(const ProbableGround& ground,
                                               const LocalPlane& plane) {
  PlaneCell cell{};
  const auto add = [&](const Ring& ring) {
    std::vector<Point>& points = cell.rings.emplace_back();
    for (const Position corner : ring) {
      const PlanePoint place = plane.to_plane(corner);
      points.push_back({place.right.metres(), place.up.metres()});
    }
  };
  for (const Polygon& polygon : ground.ground.polygons) {
    add(polygon.outer);
    for (const Ring& hole : polygon.holes) add(hole);
  }
  const Point first = cell.rings.at(0).at(0);
  cell.bounds = {first.right, first.right, first.up, first.up};
  for (const auto& ring : cell.rings) {
    for (const Point& p : ring) {
      cell.bounds = joined(cell.bounds, {p.right, p.right, p.up, p.up});
    }
  }
  for (const auto& ring : cell.rings) cell.area += area_within(ring, cell.bounds);
  cell.probability = ground.probability;
  return cell;
}

/// The ring is cut at one side of the box after the other (Sutherland and Hodgman, Reentrant
/// polygon clipping, 1974 [from memory]); a hole's area is negative.
double PlaneBelief::area_within(const std::vector<Point>& ring, const Box& box) {
  std::vector<Point> points = ring;
  std::vector<Point> kept;
  const auto cut = [&](auto depth) {  // depth: how far inside the side a point lies
    kept.clear();
    for (std::size_t i = 0; i < points.size(); ++i) {
      const Point& from = points[i];
      const Point& to = points[(i + 1) % points.size()];
      const double from_depth = depth(from);
      const double to_depth = depth(to);
      if (from_depth >= 0) kept.push_back(from);
      if ((from_depth < 0) != (to_depth < 0)) {
        const double part = from_depth / (from_depth - to_depth);
        kept.push_back(
            {from.right + part * (to.right - from.right), from.up + part * (to.up - from.up)});
      }
    }
    points.swap(kept);
  };
  cut([&](const Point& p) { return p.right - box.left; });
  cut([&](const Point& p) { return box.right - p.right; });
  cut([&](const Point& p) { return p.up - box.low; });
  cut([&](const Point& p) { return box.high - p.up; });
  double twice = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point& a = points[i];
    const Point& b = points[(i + 1) % points.size()];
    // Against the box's corner, so that far-away ground keeps its digits.
    twice += (a.right - box.left) * (b.up - box.low) - (b.right - box.left) * (a.up - box.low);
  }
  return twice / 2;
}

bool PlaneBelief::holds(const PlaneCell& cell, Point point) {
  bool inside = false;
  for (const auto& ring : cell.rings) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Point& a = ring[i];
      const Point& b = ring[(i + 1) % ring.size()];
      if ((a.up > point.up) == (b.up > point.up)) continue;
      const double at = a.right + (point.up - a.up) / (b.up - a.up) * (b.right - a.right);
      if (at > point.right) inside = !inside;
    }
  }
  return inside;
}

/// Each cell's probability is dealt out over points of a lattice inside it, two or more for each
/// pixel and direction.
void PlaneBelief::fill_raster() {
  const double pixel_across = raster_bounds_.across() / kPixels;
  const double pixel_up = raster_bounds_.up() / kPixels;
  sums_.assign(row_length(kPixels) * row_length(kPixels), 0.0);
  const auto pixel = [&](Point p) -> double& {
    const int column = std::clamp(static_cast<int>((p.right - raster_bounds_.left) / pixel_across),
                                  0, kPixels - 1);
    const int row =
        std::clamp(static_cast<int>((p.up - raster_bounds_.low) / pixel_up), 0, kPixels - 1);
    return sums_[(static_cast<std::size_t>(row) + 1) * row_length(kPixels) +
                 static_cast<std::size_t>(column) + 1];
  };
  std::vector<Point> points;
  for (const PlaneCell& cell : cells_) {
    const int columns = 1 + static_cast<int>(std::ceil(2 * cell.bounds.across() / pixel_across));
    const int rows = 1 + static_cast<int>(std::ceil(2 * cell.bounds.up() / pixel_up));
    points.clear();
    for (int row = 0; row < rows; ++row) {
      for (int column = 0; column < columns; ++column) {
        const Point point{cell.bounds.left + (column + 0.5) * cell.bounds.across() / columns,
                          cell.bounds.low + (row + 0.5) * cell.bounds.up() / rows};
        if (holds(cell, point)) points.push_back(point);
      }
    }
    if (points.empty()) points.push_back(cell.rings[0][0]);  // a sliver
    const double each = cell.probability / static_cast<double>(points.size());
    for (const Point& point : points) pixel(point) += each;
  }
  for (std::size_t row = 1; row < row_length(kPixels); ++row) {
    double in_row = 0;
    for (std::size_t column = 1; column < row_length(kPixels); ++column) {
      const std::size_t at = row * row_length(kPixels) + column;
      in_row += sums_[at];
      sums_[at] = in_row + sums_[at - row_length(kPixels)];
    }
  }
}

void PlaneBelief::trim_bounds() {
  constexpr double kTrimmed = 1e-3;
  const double least = kTrimmed * sums_.back();
  const auto trimmed = [&](auto mass_below) {
    int first = 0;
    while (mass_below(first + 1) < least) ++first;
    int last = kPixels;
    while (sums_.back() - mass_below(last - 1) < least) --last;
    return std::pair{first, last};
  };
  const auto [left, right] = trimmed([&](int column) {
    return sums_[kPixels * row_length(kPixels) + static_cast<std::size_t>(column)];
  });
  const auto [low, high] = trimmed([&](int row) {
    return sums_[static_cast<std::size_t>(row) * row_length(kPixels) + kPixels];
  });
  const double pixel_across = raster_bounds_.across() / kPixels;
  const double pixel_up = raster_bounds_.up() / kPixels;
  bounds_ = {raster_bounds_.left + left * pixel_across, raster_bounds_.left + right * pixel_across,
             raster_bounds_.low + low * pixel_up, raster_bounds_.low + high * pixel_up};
}

/// The probability left of and below a point: exact for pixels that are evenly likely all over.
double PlaneBelief::below(double right, double up) const {
  const double x =
      std::clamp((right - raster_bounds_.left) / raster_bounds_.across(), 0.0, 1.0) * kPixels;
  const double y = std::clamp((up - raster_bounds_.low) / raster_bounds_.up(), 0.0, 1.0) * kPixels;
  const int column = std::min(static_cast<int>(x), kPixels - 1);
  const int row = std::min(static_cast<int>(y), kPixels - 1);
  const double across = x - column;
  const double upwards = y - row;
  const double* corner = &sums_[static_cast<std::size_t>(row) * row_length(kPixels) +
                                static_cast<std::size_t>(column)];
  const double low = corner[0] + across * (corner[1] - corner[0]);
  const double* next = corner + row_length(kPixels);
  const double high = next[0] + across * (next[1] - next[0]);
  return low + upwards * (high - low);
}

double PlaneBelief::quick_mass(const Box& box) const {
  return below(box.right, box.high) - below(box.left, box.high) - below(box.right, box.low) +
         below(box.left, box.low);
}

double PlaneBelief::mass(const Box& box) const {
  double total = 0;
  for (const PlaneCell& cell : cells_) {
    if (!overlap(cell.bounds, box)) continue;
    const bool whole = cell.bounds.left >= box.left && cell.bounds.right <= box.right &&
                       cell.bounds.low >= box.low && cell.bounds.high <= box.high;
    double share = 1;
    if (!whole) {
      double within = 0;
      for (const auto& ring : cell.rings) within += area_within(ring, box);
      share = std::clamp(within / cell.area, 0.0, 1.0);
    }
    total += cell.probability * share;
  }
  return total;
}

}  // namespace sweepwright::effort
