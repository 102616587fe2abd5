// The ground speeds of a back-and-forth pattern's legs in one wind.
//
// Problem: a vessel that an aircraft passes on each leg keeps a pace that follows from how fast the
//   aircraft flies those legs over the ground, not through the air.
// Domain: legs that can be flown in the wind; Error(impossible) otherwise, as wind_triangle.hpp.
// Source: the wind triangle (wind_triangle.hpp).
#pragma once

#include "sweepwright/flight/wind_triangle.hpp"
#include "sweepwright/pattern/coordinated_creeping_line.hpp"

namespace sweepwright::flight {

/// `first_track`: of the first leg; the pattern creeps to the side of the first turn.
pattern::LadderSpeeds ladder_speeds(TrueDirection first_track, pattern::Turn first_turn,
                                    Speed true_airspeed, const Wind& wind);

}  // namespace sweepwright::flight
