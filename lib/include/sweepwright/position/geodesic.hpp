// Shortest lines on the ellipsoid: distance and track between places, and travel along a track.
//
// Conventions: a track is the true direction of travel at a point; it changes along the line, most
//   of all near the poles, so both ends have their own.
// Domain: everywhere. Between antipodes one of the many shortest lines is taken; between equal
//   places the length is 0 and the track north.
// Accuracy: 15 nanometres (position_geodesic_test.cpp checks the published lines).
// Source: C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87 (2013), through GeographicLib.
#pragma once

#include <vector>

#include "sweepwright/base/direction.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright {

/// The shortest line from one place to another.
struct GeodesicLine {
  Length length;
  TrueDirection start_track;  ///< direction of travel on leaving
  TrueDirection end_track;    ///< direction of travel on arriving
};

/// A place reached, and the direction of travel there.
struct Arrival {
  Position position;
  TrueDirection track;
};

GeodesicLine geodesic(Position from, Position to);

/// Travel along the geodesic that leaves `from` on `track`. A negative distance goes backwards (the
/// track reported is still the forward one).
Arrival travel(Position from, TrueDirection track, Length distance);

/// A chain of places joined by shortest lines.
using Path = std::vector<Position>;

Length length(const Path& path);

}  // namespace sweepwright
