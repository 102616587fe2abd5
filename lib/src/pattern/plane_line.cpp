#include "pattern/plane_line.hpp"

#include <algorithm>
#include <cmath>

namespace sweepwright::pattern {
namespace {

/// Cuts nearer together than this share of a line are one.
constexpr double kSameShare = 1e-9;

struct Vector {
  double right;
  double up;
};

Vector vector(PlanePoint from, PlanePoint to) {
  return {(to.right - from.right).metres(), (to.up - from.up).metres()};
}

double cross(Vector a, Vector b) {
  return a.right * b.up - a.up * b.right;
}
double dot(Vector a, Vector b) {
  return a.right * b.right + a.up * b.up;
}

double nearest_share(PlanePoint point, PlanePoint from, PlanePoint to) {
  const Vector line = vector(from, to);
  const double squared = dot(line, line);
  return squared > 0 ? std::clamp(dot(vector(from, point), line) / squared, 0.0, 1.0) : 0;
}

/// True when a ring passes right of the point an odd number of times: the point is in the ring.
bool is_in_ring(PlanePoint point, const PlaneRing& ring) {
  bool odd = false;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const PlanePoint a = ring[i];
    const PlanePoint b = ring[(i + 1) % ring.size()];
    if ((a.up > point.up) == (b.up > point.up)) continue;
    const double share = (point.up - a.up) / (b.up - a.up);
    if (a.right + (b.right - a.right) * share > point.right) odd = !odd;
  }
  return odd;
}

}  // namespace

std::vector<PlanePoint> to_plane(const Path& path, const LocalPlane& plane) {
  std::vector<PlanePoint> points;
  for (const Position& place : path) points.push_back(plane.to_plane(place));
  return points;
}

PlanePoint between(PlanePoint from, PlanePoint to, double share) {
  return {from.right + (to.right - from.right) * share, from.up + (to.up - from.up) * share};
}

Length distance(PlanePoint point, PlanePoint from, PlanePoint to) {
  const Vector away = vector(between(from, to, nearest_share(point, from, to)), point);
  return Length::metres(std::hypot(away.right, away.up));
}

Length distance_to_leg(Position place, Position from, Position to) {
  // Round the place itself the plane keeps directions, and nearer on it is nearer on the ground.
  const LocalPlane plane(place);
  const PlanePoint a = plane.to_plane(from);
  const PlanePoint b = plane.to_plane(to);
  const PlanePoint nearest = between(a, b, nearest_share({}, a, b));
  return geodesic(place, plane.to_position(nearest)).length;
}

std::optional<double> crossing(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d) {
  const Vector first = vector(a, b);
  const Vector second = vector(c, d);
  const double turn = cross(first, second);
  const double flat =
      1e-12 * std::hypot(first.right, first.up) * std::hypot(second.right, second.up);
  if (!(std::abs(turn) > flat)) return std::nullopt;
  const double on_first = cross(vector(a, c), second) / turn;
  const double on_second = cross(vector(a, c), first) / turn;
  const auto on_line = [](double share) { return share >= -kSameShare && share <= 1 + kSameShare; };
  if (!on_line(on_first) || !on_line(on_second)) return std::nullopt;
  return std::clamp(on_first, 0.0, 1.0);
}

std::vector<double> crossings(PlanePoint a, PlanePoint b,
                              const std::vector<std::vector<PlanePoint>>& lines) {
  std::vector<double> shares{0, 1};
  for (const std::vector<PlanePoint>& line : lines) {
    for (std::size_t i = 1; i < line.size(); ++i) {
      if (const auto share = crossing(a, b, line[i - 1], line[i])) shares.push_back(*share);
    }
  }
  std::sort(shares.begin(), shares.end());
  std::vector<double> apart;
  for (const double share : shares) {
    if (apart.empty() || share - apart.back() > kSameShare) apart.push_back(share);
  }
  apart.back() = 1;
  return apart;
}

bool is_inside(PlanePoint point, const PlaneRegion& region) {
  bool odd = false;
  for (const PlanePolygon& polygon : region.polygons) {
    odd = odd != is_in_ring(point, polygon.outer);
    for (const PlaneRing& hole : polygon.holes) odd = odd != is_in_ring(point, hole);
  }
  return odd;
}

}  // namespace sweepwright::pattern
