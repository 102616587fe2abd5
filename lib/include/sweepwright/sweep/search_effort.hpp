// Search effort: how much area searchers sweep in the time they have, and the coverage it buys.
//
// Conventions: effort Z = W x V x T, with T the search endurance. An area A searched evenly with
//   effort Z has coverage C = Z / A.
// Domain: widths, speeds, times and areas above 0 (endurance may be 0).
// Accuracy: 1e-12 of the value (search_effort_test.cpp).
// Promises: P1 search_time_for() undoes coverage_of_effort().
// Source: IAMSAR Manual Volume II, chapter 4 [from memory]; Joint Pub 3-50 Volume I, paragraph
//   532.B, for the share of on-scene endurance [seen].
#pragma once

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/sweep/detection.hpp"

namespace sweepwright::sweep {

/// The share of on-scene endurance that is spent searching; the rest goes on turns and on looking
/// at sightings.
inline constexpr double kSearchShareOfOnSceneEndurance = 0.85;

/// The time for searching. Throws Error (value) for a negative time.
Duration search_endurance(Duration on_scene_endurance);

/// Z = W x V x T. Throws Error (value) unless width and speed are above 0 and the time is not
/// negative.
Area search_effort(Length sweep_width, Speed search_speed, Duration search_time);

/// The on-scene endurance that leaves that time for searching.
Duration on_scene_endurance_for(Duration search_time);

/// C = Z / A. Throws Error (value) unless `searched` is above 0 and the effort is not negative.
Coverage coverage_of_effort(Area effort, Area searched);

/// What a unit sweeps in an hour: W x V.
struct SweepRate {
  Length sweep_width;
  Speed search_speed;
};

/// The search time in which it gives an area that coverage: T = C A / (W V). Throws Error (value)
/// unless all are above 0.
Duration search_time_for(Coverage wanted, Area searched, const SweepRate& rate);

}  // namespace sweepwright::sweep
