// A plan over invented ground: a range that one crew's altitude clears and the other's does not.
#pragma once

#include "plan_cases.hpp"
#include "support/elevation.hpp"

namespace sweepwright::test {

/// The mountain mission over a cone of 3,000 m in its middle: FALCON 2
/// flies at 9,000 ft, HERON 1 at heights planned in steps.
inline plan::Mission mission_over_a_cone() {
  plan::Mission mission = mountain_mission();
  const Cone cone{place(38.72, -116.95), 3000, 0.05};
  plan::Elevation elevation;
  elevation.model = terrain::ElevationModel(
      {make_tile(degrees_lattice(39.3, -117.8, 1.0 / 120), 145, 217, cone)});
  mission.elevation = elevation;
  mission.units[0].search_altitude = Length::feet(9000);
  mission.units[1].heights = hazard::HeightsBy::steps;
  mission.units[1].climb = {Length::feet(500) / std::chrono::minutes(1), Speed::knots(65)};
  return mission;
}

}  // namespace sweepwright::test
