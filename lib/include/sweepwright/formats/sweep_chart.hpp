// The answer of a sweep width question as a picture: probability of detection against coverage
// under each law, with what was worked out marked on it, and the planner's lateral range curve
// under it.
//
// Accuracy: curves are drawn through points 0.02 of coverage apart.
// Source: own work.
#pragma once

#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/formats/sweep_report.hpp"

namespace sweepwright::formats {

Drawing draw_sweep_chart(const SweepReport& report);
/// The laws alone, without a search.
Drawing draw_law_chart();

}  // namespace sweepwright::formats
