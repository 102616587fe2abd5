// Lines as maps draw them, before they are cut: private to the position room.
#pragma once

#include <vector>

#include "sweepwright/position/geodesic.hpp"

namespace sweepwright {

/// Longitude and latitude in degrees; the longitude runs on past 180 so that a line never jumps.
struct Unrolled {
  double longitude;
  double latitude;
};

bool is_pole(Position p);

/// The place nearest in longitude to where the line is.
Unrolled unrolled_after(Unrolled previous, Position next);

/// Whether the geodesic between two points runs over a pole itself.
bool over_pole(Unrolled from, Unrolled to);

/// The path with points added along its geodesics.
std::vector<Unrolled> drawn(const Path& path, Length tolerance);

/// The line with points where it crosses the antimeridian: cuts there find the same numbers on both
/// sides.
std::vector<Unrolled> with_crossings(const std::vector<Unrolled>& line);

/// Which turn of the globe a longitude lies in: 0 for -180..180.
double window_of(double longitude);

}  // namespace sweepwright
