#include "sweepwright/debrief/debriefing.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "support/flown.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/datum.hpp"

namespace sweepwright::debrief {
namespace {

using testing::Contains;
using testing::HasSubstr;

constexpr Instant kStart =
    std::chrono::sys_days(std::chrono::year(2026) / 7 / 14) + std::chrono::hours(14);

/// A mission that believes in a datum a little off the middle of its area.
plan::Plan plan_at(Position place, sweep::DetectionLaw law = sweep::DetectionLaw::exponential) {
  plan::Mission mission = test::small_mission(place);
  mission.detection_law = law;
  belief::Datum datum;
  datum.position = travel(place, TrueDirection::degrees(80), Length::nautical_miles(3)).position;
  datum.error = Length::nautical_miles(4);
  mission.scenarios = {{1, "", datum}};
  return plan::make_plan(mission);
}

Sortie flown(const plan::Plan& plan, Instant start, const test::Flying& flying = {}) {
  SortieInput input;
  input.track = test::flown_track(plan.assignments[0].pattern, Speed::knots(90), start, flying);
  return make_sortie(plan, input, terrain::ElevationModel());
}

double total(const belief::Belief& belief) {
  return std::accumulate(belief.probability.begin(), belief.probability.end(), belief.outside);
}

TEST(Debriefing, a_pattern_flown_as_planned_reaches_what_was_planned) {
  // Koopman: parallel legs under the inverse cube law find erf(sqrt(pi)/2 C) [Search and Screening
  // (1946), chapter 2, from memory]; the exponential law 1 - exp(-C). The legs end half a
  // spacing inside the sector, and the strips beyond their ends (8 % of it) are seen less.
  for (const Position place : {test::at(38.25, -117), test::at(-17.5, 179.95)}) {
    for (const sweep::DetectionLaw law :
         {sweep::DetectionLaw::exponential, sweep::DetectionLaw::inverse_cube,
          sweep::DetectionLaw::definite_range}) {
      const plan::Plan plan = plan_at(place, law);
      const Debriefing found = make_debriefing(plan, {flown(plan, kStart)});
      const double planned = plan.assignments[0].probability_of_detection.value();
      EXPECT_NEAR(found.sectors[0].pod.value() / planned, 1, 0.1) << sweep::name(law);
      EXPECT_LE(found.sectors[0].pod.value(), planned + 0.01);
    }
  }
}

TEST(Debriefing, P1_the_belief_after_is_whole_and_follows_bayes) {
  const plan::Plan plan = plan_at(test::at(38.25, -117));
  const Debriefing found = make_debriefing(plan, {flown(plan, kStart)});
  EXPECT_NEAR(total(found.before), 1, 1e-9);
  EXPECT_NEAR(total(found.after), 1, 1e-9);
  double success = 0;
  for (std::size_t i = 0; i < found.cell_pod.size(); ++i) {
    success += found.before.probability[i] * found.cell_pod[i];
  }
  EXPECT_NEAR(found.success, success, 1e-12);
  EXPECT_GT(success, 0.3);
  for (std::size_t i = 0; i < found.cell_pod.size(); ++i) {
    EXPECT_NEAR(found.after.probability[i],
                found.before.probability[i] * (1 - found.cell_pod[i]) / (1 - success), 1e-12);
  }
  EXPECT_NEAR(found.after.outside, found.before.outside / (1 - success), 1e-12);
  EXPECT_NEAR(found.after.cumulative_success, success, 1e-12);
}

TEST(Debriefing, searches_before_count_in_the_cumulative_success) {
  plan::Mission mission = plan_at(test::at(38.25, -117)).mission;
  mission.earlier_success = 0.4;
  const plan::Plan plan = plan::make_plan(mission);
  const Debriefing found = make_debriefing(plan, {flown(plan, kStart)});
  EXPECT_NEAR(found.after.cumulative_success, 1 - 0.6 * (1 - found.success), 1e-12);
}

TEST(Debriefing, P2_the_shares_of_sorties_over_days_add_up) {
  const plan::Plan plan = plan_at(test::at(38.25, -117));
  const Debriefing found =
      make_debriefing(plan, {flown(plan, kStart), flown(plan, kStart + std::chrono::hours(24)),
                             flown(plan, kStart + std::chrono::hours(48), {.left_out = {1, 3}})});
  double sum = 0;
  for (const SortieResult& result : found.sorties) sum += result.success_share;
  EXPECT_NEAR(sum, found.success, 1e-12);
  // What was found by the first cannot be found again.
  EXPECT_LT(found.sorties[1].success_share, found.sorties[0].success_share);
  // Under the exponential law two searches are one of twice the coverage.
  const Debriefing twice =
      make_debriefing(plan, {flown(plan, kStart), flown(plan, kStart + std::chrono::hours(24))});
  const double once = twice.sorties[0].pod.value();
  EXPECT_NEAR(twice.sectors[0].pod.value(), 1 - (1 - once) * (1 - once), 0.02);
}

TEST(Debriefing, P3_the_order_of_sorties_does_not_matter) {
  const plan::Plan plan = plan_at(test::at(38.25, -117));
  const Sortie first = flown(plan, kStart, {.left_out = {1}});
  const Sortie second = flown(plan, kStart + std::chrono::hours(5), {.offset = Length::metres(90)});
  const Debriefing one = make_debriefing(plan, {first, second});
  const Debriefing other = make_debriefing(plan, {second, first});
  EXPECT_EQ(one.sorties[0].sortie.on_scene, other.sorties[0].sortie.on_scene);
  EXPECT_EQ(one.after.probability, other.after.probability);
}

TEST(Debriefing, P4_a_sortie_that_counts_nothing_changes_nothing) {
  const plan::Plan plan = plan_at(test::at(38.25, -117));
  SortieInput input;
  const Sortie none = make_sortie(plan, input, terrain::ElevationModel());
  const Debriefing found = make_debriefing(plan, {none});
  EXPECT_EQ(found.success, 0);
  EXPECT_EQ(found.after.probability, found.before.probability);
}

TEST(Debriefing, without_a_belief_the_area_counts_as_even_and_that_is_said) {
  const plan::Plan plan = plan::make_plan(test::small_mission(test::at(78.2, 16)));
  const Debriefing found = make_debriefing(plan, {flown(plan, kStart, {.left_out = {1, 3, 5}})});
  EXPECT_TRUE(found.even_belief);
  EXPECT_THAT(found.remarks, Contains(HasSubstr("states no belief")));
  EXPECT_NEAR(found.before.outside, 0, 1e-9);
  // Even belief over one sector: POS is its mean POD.
  EXPECT_NEAR(found.success / found.sectors[0].pod.value(), 1, 0.02);
  EXPECT_NEAR(found.sectors[0].containment_before, 1, 0.01);
  // All of it is in the sector before and after.
  EXPECT_NEAR(found.sectors[0].containment_after, 1, 0.02);
}

TEST(Debriefing, the_proposal_goes_where_less_was_seen) {
  const plan::Plan plan = plan::make_plan(test::small_mission(test::at(38.25, -117)));
  const Debriefing found = make_debriefing(plan, {flown(plan, kStart, {.left_out = {1, 3, 5}})});
  ASSERT_TRUE(found.next);
  const auto& pods = found.cell_pod;
  const auto& coverages = found.next->coverages;
  const auto best = static_cast<std::size_t>(std::max_element(coverages.begin(), coverages.end()) -
                                             coverages.begin());
  EXPECT_LT(pods[best], 0.5);
}

TEST(Debriefing, a_leg_left_out_is_a_hole) {
  const plan::Plan plan = plan_at(test::at(38.25, -117), sweep::DetectionLaw::definite_range);
  const HoleLimit limit{sweep::Probability(0.3), {}};
  const auto none = sector_holes(plan, make_debriefing(plan, {flown(plan, kStart)}), limit);
  const auto one =
      sector_holes(plan, make_debriefing(plan, {flown(plan, kStart, {.left_out = {5}})}), limit);
  const auto largest = [](const std::vector<std::vector<Hole>>& all) {
    return all[0].empty() ? Area() : all[0].front().area;
  };
  const pattern::Leg& leg = plan.assignments[0].pattern.legs[4];
  const Area strip = leg.line.length * plan.assignments[0].sweep_width.width;
  EXPECT_GT(largest(one), 0.8 * strip);
  EXPECT_LT(largest(none), 0.3 * strip);
}

TEST(Debriefing, no_sorties_are_refused) {
  const plan::Plan plan = plan::make_plan(test::small_mission(test::at(38.25, -117)));
  EXPECT_THROW(make_debriefing(plan, {}), Error);
}

}  // namespace
}  // namespace sweepwright::debrief
