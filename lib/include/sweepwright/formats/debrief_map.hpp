// The map of a debrief: the probability of detection as flown, tracks, holes, sightings.
//
// Conventions: as the other maps (map.hpp). Ground is shaded by the probability of detection of all
//   sorties, in steps (ramp.hpp); ground under the planner's limit is outlined. Stretches that
//   count as search are drawn in the crew's line, all others thin and grey.
// Domain: any debrief; paper of at least kLeastMapSize.
// Accuracy: shading is sampled every 0.7 mm on the paper.
// Promises: P1 all that is drawn lies on the paper; P2 same outcome, same drawing
//   (debrief_files_test.cpp).
#pragma once

#include "sweepwright/formats/debrief_outcome.hpp"
#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

/// Throws Error(value) for paper that is too small.
Drawing draw_debrief_map(const DebriefOutcome& outcome, PaperSize size);

/// Effort swept by each crew as time went on.
Drawing draw_debrief_chart(const DebriefOutcome& outcome, double width_mm);

}  // namespace sweepwright::formats
