// Where the sun stands, seen from a place at a time.
//
// Conventions: azimuth from true north; elevation of the sun's centre above the level horizon,
//   without refraction. A place at a pole has its longitude's meridian for north.
// Domain: years 1900 to 2100.
// Accuracy: 0.02 degree of azimuth times cosine of elevation, and of elevation, against a general
//   astronomy library (daylight_test.cpp).
// Source: J. Meeus, Astronomical Algorithms, 2nd ed., ch. 25, low accuracy, as in the solar
//   calculator of NOAA's Global Monitoring Laboratory (formulas from memory; numbers checked).
#pragma once

#include "sweepwright/base/direction.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::flight {

struct SunPosition {
  TrueDirection azimuth;
  Angle elevation;
};

SunPosition sun_position(Position place, TimePoint time);

/// By how much the sun is past its highest: -180 to 180 degrees, 15 an hour.
Angle hour_angle(Position place, TimePoint time);

}  // namespace sweepwright::flight
