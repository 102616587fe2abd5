#include "sweepwright/flight/flown_path.hpp"

#include <cmath>

namespace sweepwright::flight {
namespace {

/// Relative to a drifting object a straight leg is not quite a geodesic over the ground.
constexpr int kPiecesWhenDrifting = 8;

Position moved(Position from, Offset way) {
  return travel(from, direction(way), length(way)).position;
}

/// A turn, or the parts of a join one after the other, laid out from where they begin: north is
/// that of the beginning all through, since near a pole it turns within a few miles.
struct Joint {
  Position start;
  Offset way;
  Position position() const { return moved(start, way); }
};

/// The places of a turn, relative to the object; `joint` is moved on to its end.
std::vector<PathPoint> turn_points(const FlownTurn& turn, Joint& joint, Duration start) {
  std::vector<PathPoint> points{{joint.position(), start}};
  Duration time = start;
  for (const Arc& arc : turn.arcs) {
    const int steps = static_cast<int>(std::ceil(std::abs(arc.turned / kArcStep)));
    for (int i = 1; i <= steps; ++i) {
      const Arc part{arc.heading, arc.turned * (1.0 * i / steps)};
      points.push_back({moved(joint.start, joint.way + way_over_ground(part, turn.flight)),
                        time + part.time(turn.flight.rate)});
    }
    joint.way = joint.way + way_over_ground(arc, turn.flight);
    time += arc.time(turn.flight.rate);
  }
  return points;
}

/// The straight part of a leg, relative to the object.
std::vector<PathPoint> straight_points(const FlownLeg& leg, int pieces) {
  const Length length = leg.leg.line.length - leg.lead_in - leg.lead_out;
  std::vector<PathPoint> points;
  for (int i = 0; i <= pieces; ++i) {
    const double share = 1.0 * i / pieces;
    const Length along = leg.lead_in + length * share;
    Position place = travel(leg.leg.from, leg.leg.line.start_track, along).position;
    if (along == Length()) place = leg.leg.from;
    if (along == leg.leg.line.length) place = leg.leg.to;
    points.push_back({place, leg.start + leg.time * share});
  }
  return points;
}

/// The straight part of a join; `joint` is moved on to its end.
std::vector<PathPoint> joined_points(const FlownLeg& leg, Joint& joint, Velocity object) {
  const PathPoint start{joint.position(), leg.start};
  joint.way = joint.way +
              (make_velocity(leg.triangle.track, leg.triangle.ground_speed) - object) * leg.time;
  return {start, {joint.position(), leg.start + leg.time}};
}

}  // namespace

std::vector<FlownLegPath> flown_paths(const FlownPattern& flown) {
  const Velocity object = flown.drift ? velocity(*flown.drift) : Velocity();
  std::vector<FlownLegPath> paths;
  Joint joint;
  for (const FlownLeg& leg : flown.legs) {
    FlownLegPath path;
    if (leg.joined) {
      path.straight = joined_points(leg, joint, leg.searching ? object : Velocity());
    } else {
      path.straight = straight_points(leg, flown.drift && leg.searching ? kPiecesWhenDrifting : 1);
      joint = {leg.leg.to, make_offset(leg.leg.line.end_track, -leg.lead_out)};
    }
    if (leg.turn) path.turn = turn_points(*leg.turn, joint, path.straight.back().time);
    if (flown.drift && leg.searching) {
      for (auto* points : {&path.straight, &path.turn}) {
        for (PathPoint& point : *points) {
          point.position = over_ground(flown, point.position, point.time);
        }
      }
    }
    paths.push_back(std::move(path));
  }
  return paths;
}

Path places(const std::vector<PathPoint>& points) {
  Path path;
  for (const PathPoint& point : points) path.push_back(point.position);
  return path;
}

Path whole_path(const FlownPattern& flown) {
  Path path;
  for (const FlownLegPath& part : flown_paths(flown)) {
    for (const auto* points : {&part.straight, &part.turn}) {
      for (const PathPoint& point : *points) {
        if (path.empty() || path.back() != point.position) path.push_back(point.position);
      }
    }
  }
  return path;
}

}  // namespace sweepwright::flight
