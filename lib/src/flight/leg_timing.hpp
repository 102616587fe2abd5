// How long a straight leg takes in a steady wind; private to the flight room.
#pragma once

#include "sweepwright/flight/wind_triangle.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::flight {

struct LegTiming {
  WindTriangle start;
  WindTriangle end;
  /// Of the whole leg; parts of it take their share.
  Duration time{};
};

/// The track of a shortest line changes along it, and so does the wind correction. Throws
/// Error(impossible) when some part of the leg cannot be flown.
LegTiming leg_timing(Position from, const GeodesicLine& line, Speed true_airspeed,
                     const Wind& wind);

}  // namespace sweepwright::flight
