#include "sweepwright/pattern/route.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "pattern/plane_line.hpp"
#include "pattern/require.hpp"
#include "sweepwright/position/local_plane.hpp"
#include "sweepwright/position/position_text.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::pattern {
namespace {

/// A sharper bend is a route that comes back along itself.
constexpr Angle kSharpestBend = Angle::degrees(170);
/// Under this, both sides of a bend are as good as straight.
constexpr Angle kStraight = Angle::degrees(2);
/// What counts as nearer than the offset: corners of lines 30 NM off are right to 0.002 %, and the
/// loop of a bend over kStraight is nearer by more than 0.01 %.
constexpr double kNearer = 0.9999;

Angle bend_at(const GeodesicLine& before, const GeodesicLine& after) {
  return turn_between(before.end_track, after.start_track);
}

std::vector<GeodesicLine> route_legs(const Path& route) {
  std::vector<GeodesicLine> legs;
  for (std::size_t i = 1; i < route.size(); ++i) legs.push_back(geodesic(route[i - 1], route[i]));
  return legs;
}

/// A plane that holds the route; Error(geometry) when none does.
LocalPlane plane_round(const Path& route) {
  return LocalPlane(middle(Region{{Polygon{route, {}}}}));
}

/// Corners round a place on the outside of a turn, from the end of one line to the start of the
/// next, none farther than 1.42 offsets away.
void add_outside_corners(Position place, TrueDirection track_in, Angle turn, Length offset,
                         Path& line) {
  const int corners = static_cast<int>(std::ceil(std::abs(turn.degrees()) / 90 - 1e-9));
  const Angle step = turn / std::max(corners, 1);
  for (int i = 0; i < std::max(corners, 1); ++i) {
    const TrueDirection out = track_in + Angle::degrees(90) + step * (i + 0.5);
    line.push_back(travel(place, out, offset / std::cos(step.radians() / 2)).position);
  }
}

/// The line beside each leg, joined at the bends, with the loops that inside bends make.
Path line_with_loops(const Path& route, const std::vector<GeodesicLine>& legs, Length offset) {
  constexpr Angle kRight = Angle::degrees(90);
  Path line{travel(route.front(), legs.front().start_track + kRight, offset).position};
  for (std::size_t i = 1; i < legs.size(); ++i) {
    const Angle bend = bend_at(legs[i - 1], legs[i]);
    const bool inside = (bend > Angle()) == (offset > Length());
    if (inside && std::abs(bend.degrees()) > kStraight.degrees()) {
      line.push_back(travel(route[i], legs[i - 1].end_track + kRight, offset).position);
      line.push_back(travel(route[i], legs[i].start_track + kRight, offset).position);
    } else {
      add_outside_corners(route[i], legs[i - 1].end_track, bend, offset, line);
    }
  }
  line.push_back(travel(route.back(), legs.back().end_track + kRight, offset).position);
  return line;
}

/// Half rings round both ends of the route, where another part of it may come near.
std::vector<Path> lines_round_ends(const Path& route, const std::vector<GeodesicLine>& legs,
                                   Length offset) {
  const Length radius = Length::metres(std::abs(offset.metres()));
  const auto half_ring = [&](Position place, TrueDirection track) {
    Path ring{travel(place, track - Angle::degrees(90), radius).position};
    for (int i = 0; i < 4; ++i) {
      add_outside_corners(place, track - Angle::degrees(180.0 - 45.0 * i), Angle::degrees(45),
                          radius, ring);
    }
    ring.push_back(travel(place, track + Angle::degrees(90), radius).position);
    return ring;
  };
  return {half_ring(route.front(), legs.front().start_track.reversed()),
          half_ring(route.back(), legs.back().end_track)};
}

/// True when a place lies nearer to the route than that.
class RouteDistance {
 public:
  RouteDistance(const Path& route, const LocalPlane& plane, Length limit)
      : route_(route), flat_(to_plane(route, plane)), limit_(limit) {}

  bool is_nearer(Position place, PlanePoint flat_place) const {
    for (std::size_t i = 1; i < route_.size(); ++i) {
      // Lengths on the plane are up to 2.5 % too long: legs that are far off there are far off.
      if (distance(flat_place, flat_[i - 1], flat_[i]) > limit_ * 1.1) continue;
      if (distance_to_leg(place, route_[i - 1], route_[i]) < limit_) return true;
    }
    return false;
  }

 private:
  const Path& route_;
  std::vector<PlanePoint> flat_;
  Length limit_;
};

}  // namespace

Path checked_route(const Path& route) {
  Path clean = without_repeats(route);
  if (clean.size() < 2) {
    throw Error(ErrorCode::geometry, "the route has one place",
                "give the two ends of the route, and the places where it turns");
  }
  if (clean.size() > kMostRoutePoints) {
    throw Error(ErrorCode::geometry, fmt::format("the route has {} places", clean.size()),
                fmt::format("thin it out to {} places", kMostRoutePoints));
  }
  const std::vector<GeodesicLine> legs = route_legs(clean);
  for (std::size_t i = 1; i < legs.size(); ++i) {
    if (std::abs(bend_at(legs[i - 1], legs[i]).degrees()) > kSharpestBend.degrees()) {
      throw Error(ErrorCode::geometry,
                  fmt::format("the route turns back on itself at {}", format_position(clean[i])),
                  "end the route there, and search the way back on its own");
    }
  }
  const LocalPlane plane = plane_round(clean);
  const std::vector<PlanePoint> flat = to_plane(clean, plane);
  const bool closed = geodesic(clean.front(), clean.back()).length <= kSamePlace;
  for (std::size_t i = 0; i + 1 < flat.size(); ++i) {
    for (std::size_t j = i + 2; j + 1 < flat.size(); ++j) {
      if (closed && i == 0 && j + 2 == flat.size()) continue;
      const std::optional<double> share = crossing(flat[i], flat[i + 1], flat[j], flat[j + 1]);
      if (!share) continue;
      throw Error(
          ErrorCode::geometry,
          fmt::format("the route crosses itself at {}",
                      format_position(plane.to_position(between(flat[i], flat[i + 1], *share)))),
          "search its parts one after the other");
    }
  }
  return clean;
}

std::vector<Path> line_beside(const Path& route, Length offset) {
  if (offset == Length()) return {route};
  const std::vector<GeodesicLine> legs = route_legs(route);
  const Path line = line_with_loops(route, legs, offset);
  std::vector<Path> cutters = lines_round_ends(route, legs, offset);
  cutters.push_back(line);
  cutters.push_back(line_with_loops(route, legs, -offset));

  const LocalPlane plane = plane_round(route);
  std::vector<std::vector<PlanePoint>> flat_cutters;
  for (const Path& cutter : cutters) flat_cutters.push_back(to_plane(cutter, plane));
  const std::vector<PlanePoint> flat = to_plane(line, plane);
  const RouteDistance route_distance(route, plane,
                                     Length::metres(std::abs(offset.metres()) * kNearer));

  std::vector<Path> pieces;
  bool open = false;  // whether the last piece reaches the place where the next one begins
  for (std::size_t i = 1; i < flat.size(); ++i) {
    const std::vector<double> shares = crossings(flat[i - 1], flat[i], flat_cutters);
    bool straight_on = false;
    for (std::size_t k = 1; k < shares.size(); ++k) {
      const PlanePoint middle = between(flat[i - 1], flat[i], (shares[k - 1] + shares[k]) / 2);
      const bool kept = !route_distance.is_nearer(plane.to_position(middle), middle);
      if (kept) {
        const Position from = plane.to_position(between(flat[i - 1], flat[i], shares[k - 1]));
        const Position to = plane.to_position(between(flat[i - 1], flat[i], shares[k]));
        if (!open && (pieces.empty() || geodesic(pieces.back().back(), from).length > kSamePlace)) {
          pieces.push_back({from});
          straight_on = false;
        }
        if (straight_on) {
          pieces.back().back() = to;
        } else {
          pieces.back().push_back(to);
        }
      }
      straight_on = kept;
      open = kept;
    }
  }
  return pieces;
}

Angle sharpest_bend(const Path& route) {
  const std::vector<GeodesicLine> legs = route_legs(route);
  double sharpest = 0;
  for (std::size_t i = 1; i < legs.size(); ++i) {
    sharpest = std::max(sharpest, std::abs(bend_at(legs[i - 1], legs[i]).degrees()));
  }
  return Angle::degrees(sharpest);
}

}  // namespace sweepwright::pattern
