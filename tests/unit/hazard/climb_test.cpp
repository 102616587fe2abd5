// Promises of climb.hpp and climb_performance.hpp. What is right: closed forms in calm air and
// along the wind.
#include "sweepwright/hazard/climb.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/flights.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::hazard {
namespace {

using test::at;
using testing::HasSubstr;
using testing::IsEmpty;

const Position kBase = at(38.25, -117.0);
const CrewName kCrew{"ALFA", "A1"};
const ClimbPerformance kClimb{Length::feet(500) / std::chrono::minutes(1), Speed::knots(75)};

/// From a base west of a leg of 6 NM that begins `out` east of it.
flight::FlownPattern flight_east(Length out, const flight::WindField& wind = {}) {
  pattern::Pattern pattern;
  const Position start = travel(kBase, TrueDirection::degrees(90), out).position;
  const Position end =
      travel(start, TrueDirection::degrees(90), Length::nautical_miles(6)).position;
  pattern.legs.push_back(pattern::make_leg(pattern::LegKind::search, start, end));
  return flight::fly(pattern, test::aircraft(Speed::knots(90)), wind, test::options_from(kBase));
}

std::vector<Finding> found(const terrain::ElevationModel& model, const flight::FlownPattern& flown,
                           std::optional<Length> altitude,
                           std::optional<ClimbPerformance> climb = kClimb) {
  TerrainTask task;
  task.altitude = altitude;
  task.base = kBase;
  task.aircraft = test::aircraft(Speed::knots(90));
  task.climb = climb;
  return climb_findings(model, flown, check_terrain(model, flown, task), kCrew);
}

terrain::ElevationModel flat(float height_m) {
  return terrain::ElevationModel({test::ground_round(
      kBase, 1.0 / 300, [=](Position) { return height_m; }, 0.5)});
}

TEST(Climb, distance_in_calm_air_is_airspeed_times_height_over_rate) {
  const flight::FlownPattern flown = flight_east(Length::nautical_miles(10));
  const flight::Aircraft craft = test::aircraft(Speed::knots(90));
  // 1,000 ft at 500 ft/min are 2 min; 75 kt are 2.5 NM in 2 min.
  EXPECT_NEAR(climb_distance(kClimb, Length::feet(1000), flown.legs[0], craft).nautical_miles(),
              2.5, 1e-9);
}

TEST(Climb, distance_is_longer_with_the_wind_behind) {
  const flight::FlownPattern flown =
      flight_east(Length::nautical_miles(10),
                  flight::WindField::uniform({TrueDirection::degrees(270), Speed::knots(15)}));
  const flight::Aircraft craft = test::aircraft(Speed::knots(90));
  // 90 kt over the ground for 2 min.
  EXPECT_NEAR(climb_distance(kClimb, Length::feet(1000), flown.legs[0], craft).nautical_miles(),
              3.0, 1e-6);
}

TEST(Climb, a_way_out_that_is_long_enough_gives_no_finding) {
  // Flat ground at 1,000 m: 3,281 ft. To 6,300 ft it takes 6.04 min, 7.55 NM.
  EXPECT_THAT(found(flat(1000), flight_east(Length::nautical_miles(8)), Length::feet(6300)),
              IsEmpty());
}

TEST(Climb, a_way_out_that_is_too_short_is_a_caution) {
  const std::vector<Finding> findings =
      found(flat(1000), flight_east(Length::nautical_miles(7)), Length::feet(6300));
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::caution);
  EXPECT_THAT(findings[0].text, HasSubstr("to 6300 ft takes 7.5 NM"));
  EXPECT_THAT(findings[0].cure, HasSubstr("0:06:02"));
}

// A step of 800 m 5 NM out: at 500 ft/min and 75 kt 2,000 ft are gained there, and 2,625 ft of
// ground and 1,000 ft of clearance are needed.
TEST(Climb, ground_that_rises_faster_than_the_climb_is_a_caution_with_its_place) {
  const Position step =
      travel(kBase, TrueDirection::degrees(90), Length::nautical_miles(5)).position;
  const terrain::ElevationModel model({test::ground_round(
      kBase, 1.0 / 300,
      [&](Position place) { return place.longitude() < step.longitude() ? 1000 : 1800; }, 0.5)});
  const std::vector<Finding> findings =
      found(model, flight_east(Length::nautical_miles(20)), Length::feet(9000));
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::caution);
  EXPECT_THAT(findings[0].text, HasSubstr("stands at 5906 ft"));
  // The corridor reaches half a mile ahead.
  EXPECT_LT(geodesic(findings[0].where.value(), step).length, Length::nautical_miles(1.2));
}

// 100 ft/min at 75 kt gain 80 ft in a mile: 240 ft at 3 NM, where a hill of 656 ft stands on the
// line.
TEST(Climb, ground_that_meets_a_slow_climb_before_the_minimum_is_gained_is_a_caution) {
  const Position hill =
      travel(kBase, TrueDirection::degrees(90), Length::nautical_miles(3)).position;
  const terrain::ElevationModel model({test::ground_round(
      kBase, 1.0 / 300,
      [&](Position place) { return place.longitude() < hill.longitude() ? 1000 : 1200; }, 0.5)});
  ClimbPerformance slow = kClimb;
  slow.rate = Length::feet(100) / std::chrono::minutes(1);
  const std::vector<Finding> findings =
      found(model, flight_east(Length::nautical_miles(20)), Length::feet(6300), slow);
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::caution);
  EXPECT_LT(geodesic(findings[0].where.value(), hill).length, Length::nautical_miles(1));
}

TEST(Climb, a_base_at_the_first_leg_needs_its_climb_over_the_base) {
  const std::vector<Finding> findings =
      found(flat(1000), flight_east(Length()), Length::feet(6300));
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::caution);
  EXPECT_THAT(findings[0].cure, HasSubstr("climb over the base first"));
}

TEST(Climb, without_performance_or_base_height_it_is_not_checked) {
  const flight::FlownPattern flown = flight_east(Length::nautical_miles(8));
  const std::vector<Finding> none = found(flat(1000), flown, Length::feet(6300), std::nullopt);
  ASSERT_EQ(none.size(), 1u);
  EXPECT_EQ(none[0].severity, Severity::not_checked);
  const std::vector<Finding> no_base = found(terrain::ElevationModel(), flown, Length::feet(6300));
  ASSERT_EQ(no_base.size(), 1u);
  EXPECT_EQ(no_base[0].severity, Severity::not_checked);
}

TEST(Climb, a_wind_stronger_than_the_climbs_airspeed_is_said) {
  ClimbPerformance slow = kClimb;
  slow.airspeed = Speed::knots(20);
  const flight::FlownPattern flown =
      flight_east(Length::nautical_miles(8),
                  flight::WindField::uniform({TrueDirection::degrees(90), Speed::knots(30)}));
  const std::vector<Finding> findings = found(flat(1000), flown, Length::feet(6300), slow);
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::must_not_fly);
}

}  // namespace
}  // namespace sweepwright::hazard
