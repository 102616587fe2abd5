// Distances from places to legs on the ground, by plain search, for checks of patterns.
#pragma once

#include <GeographicLib/AzimuthalEquidistant.hpp>
#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <vector>

#include "sweepwright/pattern/pattern.hpp"

namespace sweepwright::pattern {

inline std::vector<Leg> search_legs(const Pattern& pattern) {
  std::vector<Leg> legs;
  for (const Leg& leg : pattern.legs) {
    if (leg.kind == LegKind::search) legs.push_back(leg);
  }
  return legs;
}

/// Distance from a place to the nearest point of a leg, by trying points along it.
inline double metres_to_leg(Position place, const Leg& leg) {
  double low = 0;
  double high = 1;
  const auto distance = [&](double share) {
    return geodesic(place, travel(leg.from, leg.line.start_track, leg.line.length * share).position)
        .length.metres();
  };
  for (int i = 0; i < 60; ++i) {  // the distance to a geodesic falls, then rises
    const double third = (high - low) / 3;
    (distance(low + third) < distance(high - third) ? high : low) =
        distance(low + third) < distance(high - third) ? high - third : low + third;
  }
  return distance((low + high) / 2);
}

inline double metres_to_legs(Position place, const std::vector<Leg>& legs) {
  double least = 1e12;
  for (const Leg& leg : legs) {
    // No point of a leg is nearer than its ends by more than its length.
    const double bound = geodesic(place, leg.from).length.metres() - leg.line.length.metres();
    if (bound < least) least = std::min(least, metres_to_leg(place, leg));
  }
  return least;
}

inline double metres_to_pattern(Position place, const Pattern& pattern) {
  return metres_to_legs(place, pattern.legs);
}

/// Paths within some 100 km, laid flat for Boost.Geometry: distances are right to 0.02 %.
class FlatGround {
 public:
  using Point = boost::geometry::model::d2::point_xy<double>;
  using Line = boost::geometry::model::linestring<Point>;

  explicit FlatGround(Position centre) : centre_(centre) {}

  Point flat(Position place) const {
    double x = 0;
    double y = 0;
    GeographicLib::AzimuthalEquidistant().Forward(
        centre_.latitude().degrees(), centre_.longitude().degrees(), place.latitude().degrees(),
        place.longitude().degrees(), x, y);
    return {x, y};
  }
  Line flat(const Path& path) const {
    Line line;
    for (const Position& place : path) line.push_back(flat(place));
    return line;
  }

 private:
  Position centre_;
};

/// The legs of a path.
inline std::vector<Leg> legs_of(const Path& path) {
  std::vector<Leg> legs;
  for (std::size_t i = 1; i < path.size(); ++i) {
    legs.push_back(make_leg(LegKind::search, path[i - 1], path[i]));
  }
  return legs;
}

}  // namespace sweepwright::pattern
