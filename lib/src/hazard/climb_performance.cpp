#include "sweepwright/hazard/climb_performance.hpp"

#include "hazard/air.hpp"

namespace sweepwright::hazard {

Length climb_distance(const ClimbPerformance& climb, Length height, const flight::FlownLeg& leg,
                      const flight::Aircraft& aircraft) {
  const flight::WindTriangle triangle =
      flight::triangle_for_track(leg.triangle.track, climb.airspeed, wind_of(leg, aircraft));
  return triangle.ground_speed * (height / climb.rate);
}

}  // namespace sweepwright::hazard
