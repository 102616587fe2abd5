// Turning room: is the valley wide enough to turn back in?
//
// Problem: a crew that flies up a valley below its walls must be able to turn round before the
//   ground outclimbs it. A turn needs its diameter, and what the wind drifts it by.
// Conventions: the room at a place of a leg is from wall to wall across the track; a wall is ground
//   less than the minimum clearance below the planned height. The turn needs the diameter of the
//   circle in the air, and the way that the wind goes while half of it is flown, as if it blew
//   across. Open ground to one side is room enough. Legs
//   below the minimum are left out: they are refused as such. Places are looked at every kRoomStep
//   along the leg; each look across takes every cell within kRoomWidth of its line.
// Promises: P1 between two straight walls the room is the distance between them, to 200 m and a
//   cell (turning_room_test.cpp); P2 ground within reach of a turn that is not known is said.
// Source: turn: flight/turn.hpp; steps and widths: own choice.
#pragma once

#include <vector>

#include "sweepwright/flight/aircraft.hpp"
#include "sweepwright/hazard/finding.hpp"
#include "sweepwright/hazard/terrain_check.hpp"
#include "sweepwright/hazard/terrain_findings.hpp"

namespace sweepwright::hazard {

inline constexpr Length kRoomStep = Length::nautical_miles(0.25);
inline constexpr Length kRoomWidth = Length::metres(100);

/// What a turn back takes across the track, on this leg.
Length turn_width(const flight::FlownLeg& leg, const flight::Aircraft& aircraft);

/// One caution for each crew, at the narrowest place.
std::vector<Finding> turning_room_findings(const terrain::ElevationModel& model,
                                           const flight::FlownPattern& flown,
                                           const TerrainCheck& check, const CrewName& crew);

}  // namespace sweepwright::hazard
