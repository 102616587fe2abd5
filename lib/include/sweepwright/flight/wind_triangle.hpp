// The wind triangle: motion through the air + wind = motion over the ground.
//
// Problem: to make good a track, a crew heads into the wind by the wind correction angle; its
//   ground speed is its airspeed and the wind together. Any two sides of the triangle give the
//   third.
// Conventions: all directions true. The wind correction angle is heading minus track, positive to
//   the right. Airspeed is true airspeed (through the water for a vessel).
// Domain: a true airspeed above 0. A track that cannot be made good is Error(impossible): the
//   wind across it is stronger than the airspeed, or the ground speed along it would be under
//   kLeastGroundSpeed.
// Accuracy: the vector sum closes to 1e-12 of the airspeed (wind_triangle_test.cpp).
// Promises: P1 heading and airspeed plus wind make good exactly the track and ground speed
//   returned; P2 the three questions below answer each other; P3 wind and track both reversed
//   give the same ground speed and the same correction angle.
// Source: FAA Pilot's Handbook of Aeronautical Knowledge, ch. Navigation, wind triangle
//   (tests/checks/flight/wind_triangle.csv).
// Example: track 090, 120 kt, wind from 045 at 40 kt: heading 076, ground speed 88 kt.
#pragma once

#include "sweepwright/flight/wind.hpp"

namespace sweepwright::flight {

/// Slower than this over the ground, a leg counts as one that cannot be flown. Own choice.
inline constexpr Speed kLeastGroundSpeed = Speed::knots(1);

struct WindTriangle {
  TrueDirection track;
  TrueDirection heading;
  Angle wind_correction;  ///< heading minus track, positive to the right
  Speed ground_speed;
};

/// Which heading makes good the track? Throws Error(impossible) when none does, Error(value) for an
/// airspeed that is not above 0 or a wind speed below 0.
WindTriangle triangle_for_track(TrueDirection track, Speed true_airspeed, const Wind& wind);

/// Which track does the heading make good? With a ground speed of 0 the track is the heading. The
/// wind correction angle is not limited here: a strong wind may carry a crew backwards.
WindTriangle triangle_for_heading(TrueDirection heading, Speed true_airspeed, const Wind& wind);

/// What a crew observes of its own motion.
struct ObservedMotion {
  TrueDirection heading;
  Speed true_airspeed;
  TrueDirection track;
  Speed ground_speed;
};

/// Which wind explains what a crew observes?
Wind wind_from(const ObservedMotion& motion);

}  // namespace sweepwright::flight
