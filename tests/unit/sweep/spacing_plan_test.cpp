#include "sweepwright/sweep/spacing_plan.hpp"

#include <gtest/gtest.h>

#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

using std::chrono::hours;

const SweepRate kRate{Length::nautical_miles(2), Speed::knots(90)};
const Area kArea = Area::square_nautical_miles(400);

// The worked example of docs/methods/detection.md, by hand: 0.85 x 4 h = 3.4 h, Z = 2 x 90 x 3.4 =
// 612 square NM, C = 612 / 400 = 1.53.
TEST(SpacingPlan, WorkedExample) {
  const GroundPlan plan = effort_brought(kRate, hours(4), kArea);
  EXPECT_NEAR(plan.search_time.count() / 3600, 3.4, 1e-12);
  EXPECT_NEAR(plan.effort.square_nautical_miles(), 612, 1e-9);
  EXPECT_NEAR(coverage(plan).value(), 1.53, 1e-12);
  const SpacingPlan spacing = plan_for_coverage({}, kRate.sweep_width, coverage(plan));
  EXPECT_NEAR(spacing.spacing.nautical_miles(), 2 / 1.53, 1e-12);
}

TEST(SpacingPlanPromise1, AnyTwoOfAreaHoursAndCoverageFitTheThird) {
  const GroundPlan brought = effort_brought(kRate, hours(4), kArea);
  const GroundPlan needed = hours_needed(kRate, kArea, coverage(brought));
  EXPECT_NEAR(needed.on_scene_endurance / Duration(hours(4)), 1, 1e-12);
  EXPECT_NEAR(needed.effort / brought.effort, 1, 1e-12);
  const GroundPlan reached = area_reached(kRate, hours(4), coverage(brought));
  EXPECT_NEAR(reached.area / kArea, 1, 1e-12);
}

TEST(SpacingPlan, SpacingCoverageAndProbabilityAgree) {
  for (const DetectionLaw law : {DetectionLaw::inverse_cube, DetectionLaw::exponential}) {
    const DetectionModel model{EffortLayout::parallel, law};
    const SpacingPlan first = plan_for_spacing(model, kRate.sweep_width, Length::nautical_miles(3));
    const SpacingPlan second = plan_for_coverage(model, kRate.sweep_width, first.coverage);
    const SpacingPlan third =
        plan_for_probability(model, kRate.sweep_width, first.probability_of_detection);
    for (const SpacingPlan& plan : {second, third}) {
      EXPECT_NEAR(plan.spacing / first.spacing, 1, 1e-12);
      EXPECT_NEAR(plan.coverage.value(), first.coverage.value(), 1e-12);
      EXPECT_NEAR(plan.probability_of_detection.value(), first.probability_of_detection.value(),
                  1e-12);
    }
  }
}

TEST(SpacingPlan, RefusesWhatIsNotAbove0) {
  EXPECT_THROW(effort_brought(kRate, hours(0), kArea), Error);
  EXPECT_THROW(effort_brought(kRate, hours(-1), kArea), Error);
  EXPECT_THROW(effort_brought(kRate, hours(1), Area()), Error);
  EXPECT_THROW(area_reached(kRate, hours(1), Coverage()), Error);
  EXPECT_THROW(hours_needed(kRate, kArea, Coverage()), Error);
}

}  // namespace
}  // namespace sweepwright::sweep
