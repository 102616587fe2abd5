// Climbs: can the aircraft reach the planned heights in the room that the flight leaves for it?
//
// Problem: a pattern that steps up a mountainside on paper may ask for more climb than a loaded
//   aircraft has at that height; and the way out begins at the base's elevation, not at the height
//   planned for it.
// Conventions: a greater height must be reached before the part that needs it begins. A climb may
//   begin as early as it must: higher is safe as far as ground goes. The climb from the base goes
//   straight along the way out, from the model's height of the base on. Where it has gained the
//   minimum clearance it must keep it above the corridor; before, from half a mile out, half of
//   what has been gained above the ground that the line itself crosses (own rule).
// Domain: as climb_performance.hpp. Winds in which the track cannot be made good at the climb's
//   airspeed give a finding that says so.
// Promises: P1 no climb performance, or a base whose height is not known: not checked, never
//   silence (climb_test.cpp).
// Source: own rules.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/hazard/finding.hpp"
#include "sweepwright/hazard/terrain_check.hpp"
#include "sweepwright/hazard/terrain_findings.hpp"

namespace sweepwright::hazard {

std::vector<Finding> climb_findings(const terrain::ElevationModel& model,
                                    const flight::FlownPattern& flown, const TerrainCheck& check,
                                    const CrewName& crew);

}  // namespace sweepwright::hazard
