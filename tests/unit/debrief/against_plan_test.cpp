#include "sweepwright/debrief/against_plan.hpp"

#include <gtest/gtest.h>

#include "support/flown.hpp"

namespace sweepwright::debrief {
namespace {

constexpr Instant kStart =
    std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(14);

AgainstPlan flown(const plan::Plan& plan, const test::Flying& flying) {
  SortieInput input;
  input.track = test::flown_track(plan.assignments[0].pattern, Speed::knots(90), kStart, flying);
  const Sortie sortie = make_sortie(plan, input, terrain::ElevationModel());
  return against_plan(plan.assignments[0], sortie.pieces);
}

TEST(AgainstPlan, P1_legs_flown_as_planned_have_no_error) {
  for (const Position& place : test::awkward_places()) {
    const plan::Plan plan = plan::make_plan(test::small_mission(place));
    const AgainstPlan found = flown(plan, {});
    EXPECT_EQ(found.missed + found.partly, 0);
    EXPECT_NEAR(found.flown_share, 1, 1e-4);
    EXPECT_LT(found.largest_error, Length::metres(1));
    ASSERT_TRUE(found.mean_spacing);
    EXPECT_NEAR(*found.mean_spacing / plan.assignments[0].spacing, 1, 1e-3);
    EXPECT_EQ(found.legs.size(),
              static_cast<std::size_t>(pattern::search_leg_count(plan.assignments[0].pattern)));
  }
}

TEST(AgainstPlan, an_offset_to_the_right_is_seen_and_makes_spacings_uneven) {
  const plan::Plan plan = plan::make_plan(test::small_mission(test::at(38.25, -117)));
  const Length spacing = plan.assignments[0].spacing;
  const Length offset = spacing * 0.2;
  const AgainstPlan found = flown(plan, {.offset = offset});
  for (const LegAsFlown& leg : found.legs) EXPECT_NEAR(leg.mean_offset / offset, 1, 0.01);
  // Legs run back and forth: the offsets meet in one gap and part in the next.
  ASSERT_TRUE(found.widest_spacing);
  EXPECT_NEAR(*found.widest_spacing / spacing, 1.4, 0.01);
  EXPECT_NEAR(found.mean_error / offset, 1, 0.01);
}

TEST(AgainstPlan, a_leg_left_out_is_missed) {
  const plan::Plan plan = plan::make_plan(test::small_mission(test::at(-17.5, 179.9)));
  const AgainstPlan found = flown(plan, {.left_out = {3}});
  EXPECT_EQ(found.missed, 1);
  for (const LegAsFlown& leg : found.legs) {
    EXPECT_EQ(leg.flown_share < kMissedBelow, leg.number == 3);
    EXPECT_EQ(leg.spacing_to_next.has_value(),
              leg.number != 3 && leg.number != 1 && leg.number != found.legs.back().number)
        << leg.number;
  }
}

TEST(AgainstPlan, a_track_elsewhere_flies_none_of_it) {
  const plan::Plan plan = plan::make_plan(test::small_mission(test::at(38.25, -117)));
  const plan::Plan other = plan::make_plan(test::small_mission(test::at(-60, 100)));
  SortieInput input;
  input.track = test::flown_track(other.assignments[0].pattern, Speed::knots(90), kStart);
  const Sortie sortie = make_sortie(plan, input, terrain::ElevationModel());
  const AgainstPlan found = against_plan(plan.assignments[0], sortie.pieces);
  EXPECT_EQ(found.missed, static_cast<int>(found.legs.size()));
  EXPECT_EQ(found.flown_share, 0);
}

}  // namespace
}  // namespace sweepwright::debrief
