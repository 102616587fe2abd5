// The timeline of a plan: who is where when, as a chart.
//
// Problem: the planner must see at a glance which crews are out, when each leaves its sector, when
//   it must be back, and how far off the dark is.
// Conventions: one row for each crew in the order of the plan; local time below, UTC above. A row
//   shows the way out, the time on scene, the way back, and what follows of the endurance where the
//   mission tells it: time to spare, then the reserve. Bingo is marked where it is known. Darkness
//   is that of the middle of the area, in two greys. Nothing is drawn that the plan does not hold;
//   there is no mark for the present moment, because a printed page has none.
// Domain: any plan; spans of time of any length, polar day and polar night. Paper of at least
//   kLeastTimelineWidth and the height that timeline_height_mm() tells.
// Promises: P1 all that is drawn lies on the paper; P2 bars and marks lie where their times do; P3
//   same plan, same drawing (timeline_test.cpp).
// Source: own design.
#pragma once

#include <cstddef>

#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

inline constexpr double kLeastTimelineWidth = 120;  ///< mm

/// The height that so many crews need to be read with ease.
double timeline_height_mm(std::size_t crews);

/// Throws Error(value) when the paper is too narrow or there is no crew.
Drawing draw_timeline(const plan::Plan& plan, double width_mm);

}  // namespace sweepwright::formats
