#include "sweepwright/flight/track_ahead.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/position/local_plane.hpp"

namespace sweepwright::flight {
namespace {

/// Pieces of the track that are laid on the plane one by one.
constexpr Length kPiece = Length::kilometres(50);
/// Meetings closer than this are one: a corner, or two areas that touch.
constexpr Length kSamePlace = Length::metres(0.1);

void require_motion(const PresentMotion& motion, Length until) {
  if (!(motion.ground_speed > Speed())) {
    throw Error(ErrorCode::value, "the ground speed is not above 0", "give a speed such as 90kt");
  }
  if (!(until > Length() && until <= kFarthestAhead)) {
    throw Error(
        ErrorCode::value,
        fmt::format("the track ahead cannot be {} long",
                    format_length(until, LengthUnit::nautical_mile, 1)),
        fmt::format("give a length above 0, up to {:.0f} NM", kFarthestAhead.nautical_miles()));
  }
}

PlaceAhead place_ahead(const PresentMotion& motion, Length distance) {
  const Arrival there = travel(motion.position, motion.track, distance);
  return {there.position, there.track, distance, distance / motion.ground_speed};
}

std::optional<PlanePoint> on_plane(const LocalPlane& plane, Position position) {
  if (geodesic(plane.centre(), position).length > kLocalPlaneReach) return std::nullopt;
  return plane.to_plane(position);
}

double cross(PlanePoint a, PlanePoint b, PlanePoint c) {
  return (b.right - a.right).metres() * (c.up - a.up).metres() -
         (b.up - a.up).metres() * (c.right - a.right).metres();
}

/// How far along from a to b the edge is crossed, as a share; none when it is not.
std::optional<double> crossing(PlanePoint a, PlanePoint b, PlanePoint edge_a, PlanePoint edge_b) {
  const double from = cross(edge_a, edge_b, a);
  const double to = cross(edge_a, edge_b, b);
  const double low = cross(a, b, edge_a);
  const double high = cross(a, b, edge_b);
  if ((from > 0) == (to > 0) || (low > 0) == (high > 0)) return std::nullopt;
  return from / (from - to);
}

}  // namespace

std::vector<PlaceAhead> marks_ahead(const PresentMotion& motion, Length step, Length until) {
  require_motion(motion, until);
  if (!(step > Length()) || until / step > kMostMarks) {
    throw Error(ErrorCode::value,
                fmt::format("a mark each {} on {} cannot be drawn",
                            format_length(step, LengthUnit::nautical_mile, 2),
                            format_length(until, LengthUnit::nautical_mile, 1)),
                fmt::format("give a step that makes 1 to {} marks", kMostMarks));
  }
  std::vector<PlaceAhead> marks;
  const int count = static_cast<int>(std::floor(until / step * (1 + 1e-12)));
  for (int i = 1; i <= count; ++i) marks.push_back(place_ahead(motion, step * i));
  return marks;
}

std::vector<BoundaryMeeting> boundary_meetings(const PresentMotion& motion, Length until,
                                               const Region& boundary) {
  require_motion(motion, until);
  const LocalPlane plane = local_plane(boundary);
  std::vector<std::pair<PlanePoint, PlanePoint>> edges;
  const auto add_edges = [&](const Ring& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      edges.emplace_back(plane.to_plane(ring[i]), plane.to_plane(ring[(i + 1) % ring.size()]));
    }
  };
  for (const Polygon& polygon : boundary.polygons) {
    add_edges(polygon.outer);
    for (const Ring& hole : polygon.holes) add_edges(hole);
  }
  std::vector<Length> distances;
  for (Length from; from < until; from += kPiece) {
    const Length to = std::min(from + kPiece, until);
    const auto a = on_plane(plane, place_ahead(motion, from).position);
    const auto b = on_plane(plane, place_ahead(motion, to).position);
    if (!a || !b) continue;
    for (const auto& [edge_a, edge_b] : edges) {
      if (const auto share = crossing(*a, *b, edge_a, edge_b)) {
        const Position met = plane.to_position(
            {a->right + (b->right - a->right) * *share, a->up + (b->up - a->up) * *share});
        distances.push_back(geodesic(motion.position, met).length);
      }
    }
  }
  std::sort(distances.begin(), distances.end());
  std::vector<BoundaryMeeting> meetings;
  for (const Length distance : distances) {
    if (!meetings.empty() && distance - meetings.back().place.distance < kSamePlace) continue;
    const Position just_past = place_ahead(motion, distance + kSamePlace).position;
    meetings.push_back({place_ahead(motion, distance), contains(boundary, just_past)});
  }
  return meetings;
}

}  // namespace sweepwright::flight
