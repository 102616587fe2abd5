#include "sweepwright/sweep/spacing_plan.hpp"

#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {

SpacingPlan plan_for_spacing(const DetectionModel& model, Length sweep_width, Length spacing) {
  return {spacing, coverage(sweep_width, spacing),
          probability_of_detection(model, sweep_width, spacing)};
}

SpacingPlan plan_for_coverage(const DetectionModel& model, Length sweep_width, Coverage coverage) {
  const Length spacing = track_spacing(sweep_width, coverage);
  return {spacing, coverage, probability_of_detection(model, sweep_width, spacing)};
}

SpacingPlan plan_for_probability(const DetectionModel& model, Length sweep_width,
                                 Probability wanted) {
  return plan_for_spacing(model, sweep_width, spacing_for(model, sweep_width, wanted));
}

GroundPlan hours_needed(const SweepRate& rate, Area area, Coverage wanted) {
  const Duration time = search_time_for(wanted, area, rate);
  return {area, rate.search_speed, on_scene_endurance_for(time), time,
          search_effort(rate.sweep_width, rate.search_speed, time)};
}

GroundPlan area_reached(const SweepRate& rate, Duration on_scene_endurance, Coverage wanted) {
  if (wanted == Coverage()) {
    throw Error(ErrorCode::value, "the wanted coverage is 0, expected more than 0");
  }
  const Duration time = search_endurance(on_scene_endurance);
  const Area effort = search_effort(rate.sweep_width, rate.search_speed, time);
  return {effort / wanted.value(), rate.search_speed, on_scene_endurance, time, effort};
}

GroundPlan effort_brought(const SweepRate& rate, Duration on_scene_endurance, Area area) {
  const Duration time = search_endurance(on_scene_endurance);
  const Area effort = search_effort(rate.sweep_width, rate.search_speed, time);
  const Coverage brought = coverage_of_effort(effort, area);
  if (brought == Coverage()) {
    throw Error(ErrorCode::value, "the on-scene endurance is 0: nothing can be searched");
  }
  return {area, rate.search_speed, on_scene_endurance, time, effort};
}

Coverage coverage(const GroundPlan& plan) {
  return coverage_of_effort(plan.effort, plan.area);
}

}  // namespace sweepwright::sweep
