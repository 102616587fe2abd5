// What a terrain check has to say: legs below the minimum, ground that was not checked, ground that
// rises ahead.
//
// Conventions: a leg below the minimum must not be flown, one finding for each leg, at the place of
//   the least clearance. Ground that the model does not know is one finding for each crew, not
//   checked. Ground ahead is looked for kLookAhead beyond the end of each leg, straight on, within
//   the corridor: a turn that is begun late, or missed, leads there. It is one caution for each
//   crew, at the worst place. Planned above the search height because the minimum asks for it, and
//   flown much higher than the search height above the ground, are said too: the sweep width was
//   that of the search height.
// Promises: P1 there is a finding of severity must_not_fly exactly when a piece is below the
//   minimum; P2 there is one of severity not_checked when a piece of a corridor is not known
//   (terrain_findings_test.cpp).
// Source: the project's own limits.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/hazard/finding.hpp"
#include "sweepwright/hazard/terrain_check.hpp"

namespace sweepwright::hazard {

/// How far beyond a leg's end the ground is looked at: what is flown in so long. Own choice.
inline constexpr Duration kLookAhead = std::chrono::minutes(1);
/// Flown higher above the ground than this many search heights, a leg is worth a word. Own choice.
inline constexpr double kHighAboveGround = 2;

/// Who flies, for the findings' names.
struct CrewName {
  std::string crew;
  std::string sector;
};

std::vector<Finding> terrain_findings(const terrain::ElevationModel& model,
                                      const flight::FlownPattern& flown, const TerrainCheck& check,
                                      const CrewName& crew);

/// What makes the model itself look wrong (terrain/doubts.hpp), as cautions about all crews.
std::vector<Finding> model_findings(const terrain::ElevationModel& model);

}  // namespace sweepwright::hazard
