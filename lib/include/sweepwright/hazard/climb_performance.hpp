// ClimbPerformance: how fast an aircraft gains height, and what way over the ground that takes.
//
// Conventions: rate of climb and airspeed are those that the crew expects at the planned heights,
//   held all the way. The wind is that of the leg's start.
// Domain: a rate of climb above 0; Error(impossible) where the track cannot be made good at the
//   climb's airspeed.
// Promises: P1 in calm air a climb of h at rate r and airspeed v takes a distance of v h / r
//   (climb_test.cpp).
// Source: plane geometry; flight/wind_triangle.hpp.
#pragma once

#include "sweepwright/flight/aircraft.hpp"
#include "sweepwright/flight/flown_pattern.hpp"

namespace sweepwright::hazard {

struct ClimbPerformance {
  Speed rate;      ///< upwards
  Speed airspeed;  ///< true, while climbing
};

/// The way over the ground that a climb of `height` takes along a leg.
Length climb_distance(const ClimbPerformance& climb, Length height, const flight::FlownLeg& leg,
                      const flight::Aircraft& aircraft);

}  // namespace sweepwright::hazard
