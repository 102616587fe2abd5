// The air that a leg is flown in, from its wind triangle; private to the hazard room.
#pragma once

#include "sweepwright/flight/aircraft.hpp"
#include "sweepwright/flight/flown_pattern.hpp"

namespace sweepwright::hazard {

Speed true_airspeed(const flight::FlownLeg& leg, const flight::Aircraft& aircraft);
/// At the leg's start.
flight::Wind wind_of(const flight::FlownLeg& leg, const flight::Aircraft& aircraft);

}  // namespace sweepwright::hazard
