// Spacing, coverage, probability, ground and time: each from the others, for one sweep width.
//
// Problem: a planner has some of them and asks for the rest: what spacing for this probability,
// what
//   the hours reach, how many hours this area needs.
// Conventions: C = W / S, Z = W V T, C = Z / A; T is 85 % of the on-scene endurance
//   (search_effort.hpp). Several units of the same width and speed count as one with their hours
//   together.
// Domain: all above 0.
// Accuracy: 1e-12 of the value, with a lateral range curve 1e-9 (spacing_plan_test.cpp).
// Promises: P1 whichever two of area, hours and coverage are given, the third fits them.
// Source: as search_effort.hpp and detection_model.hpp.
#pragma once

#include "sweepwright/sweep/detection_model.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::sweep {

/// A track spacing and what it gives.
struct SpacingPlan {
  Length spacing;
  Coverage coverage;
  Probability probability_of_detection;
};

SpacingPlan plan_for_spacing(const DetectionModel& model, Length sweep_width, Length spacing);
SpacingPlan plan_for_coverage(const DetectionModel& model, Length sweep_width, Coverage coverage);
SpacingPlan plan_for_probability(const DetectionModel& model, Length sweep_width,
                                 Probability wanted);

/// Ground that is searched, and the time for it.
struct GroundPlan {
  Area area;
  Speed search_speed;
  Duration on_scene_endurance{};
  Duration search_time{};
  Area effort;
};

/// What is wanted over an area, and the hours that it needs.
GroundPlan hours_needed(const SweepRate& rate, Area area, Coverage wanted);
/// The area that the hours reach at a coverage.
GroundPlan area_reached(const SweepRate& rate, Duration on_scene_endurance, Coverage wanted);
/// The effort that the hours bring to an area.
GroundPlan effort_brought(const SweepRate& rate, Duration on_scene_endurance, Area area);

/// The coverage that a ground plan has.
Coverage coverage(const GroundPlan& plan);

}  // namespace sweepwright::sweep
