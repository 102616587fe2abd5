#include "hazard/air.hpp"

namespace sweepwright::hazard {

Speed true_airspeed(const flight::FlownLeg& leg, const flight::Aircraft& aircraft) {
  return leg.searching ? aircraft.true_airspeed
                       : aircraft.transit_airspeed.value_or(aircraft.true_airspeed);
}

flight::Wind wind_of(const flight::FlownLeg& leg, const flight::Aircraft& aircraft) {
  return flight::wind_from({leg.triangle.heading, true_airspeed(leg, aircraft), leg.triangle.track,
                            leg.triangle.ground_speed});
}

}  // namespace sweepwright::hazard
