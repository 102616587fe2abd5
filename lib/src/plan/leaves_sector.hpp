// Whether a pattern as flown stays in its sector; private to the plan room.
#pragma once

#include <optional>

#include "sweepwright/flight/flown_pattern.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::plan {

/// The place of a flight that lies farthest outside a sector.
struct Outside {
  Length distance;  ///< from the sector's edge
  Position place;
};

/// Of the search, turns included, ways from and to the base not. None when it stays within
/// kSteering of the sector.
std::optional<Outside> farthest_outside(const flight::FlownPattern& flown, const Region& sector);

/// Nearer to the edge than this is no leaving. Own choice: what a crew does not see on its way.
inline constexpr Length kSteering = Length::metres(100);

}  // namespace sweepwright::plan
