// Aircraft: what of a search unit decides how a pattern is flown. A vessel is one too.
//
// Conventions: airspeeds are true airspeeds; for a vessel, speeds through the water, with the
//   current in place of the wind.
// Source: own choice of what is needed.
#pragma once

#include <optional>

#include "sweepwright/flight/fuel.hpp"
#include "sweepwright/flight/turn.hpp"

namespace sweepwright::flight {

struct Aircraft {
  Speed true_airspeed;                    ///< while searching
  std::optional<Speed> transit_airspeed;  ///< between base and pattern, when it differs
  Turning turning = kStandardRate;
  std::optional<FuelFlow> fuel_flow;
};

}  // namespace sweepwright::flight
