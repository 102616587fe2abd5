// Flights of a plan against the ground: who is checked, by which minima, and how it is told.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "support/elevation.hpp"
#include "support/mission.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::plan {
namespace {

using hazard::Finding;
using hazard::Severity;
using test::at;
using testing::HasSubstr;

SearchUnit unit(const std::string& callsign, sweep::Platform platform, Position base) {
  SearchUnit unit;
  unit.callsign = callsign;
  unit.platform = platform;
  unit.search_speed = Speed::knots(90);
  if (sweep::flies(platform)) unit.search_height = Length::feet(1000);
  unit.on_scene_endurance = std::chrono::hours(1);
  unit.searches_at_night = true;
  unit.base = {"Base", base};
  unit.sweep_width = Length::nautical_miles(1);
  unit.sweep_width_source = "test";
  return unit;
}

/// Two aircraft and a vessel over a square of 10 NM.
Mission mission_at(Position place) {
  Mission mission = test::mission_without_units(
      test::rectangle(place, TrueDirection::degrees(30), Length::nautical_miles(10),
                      Length::nautical_miles(10)),
      "15min");
  const Position base =
      travel(place, TrueDirection::degrees(250), Length::nautical_miles(8)).position;
  mission.units = {unit("One", sweep::Platform::fixed_wing, base),
                   unit("Two", sweep::Platform::helicopter, base),
                   unit("Three", sweep::Platform::vessel, base)};
  return mission;
}

/// The whole Earth at so many metres.
Elevation flat_earth(double height_m) {
  return {terrain::ElevationModel({test::make_tile(test::degrees_lattice(90, -180, 0.5), 361, 721,
                                                   [=](Position) { return height_m; })}),
          {}};
}

TEST(Checks, hold_everywhere_on_earth) {
  for (const Position place : test::awkward_places()) {
    Mission mission = mission_at(place);
    mission.elevation = flat_earth(1000);
    for (SearchUnit& each : mission.units) {
      each.climb = {Length::feet(500) / std::chrono::minutes(1), Speed::knots(80)};
    }
    const Plan plan = make_plan(mission);
    // 1,000 m are 3,281 ft.
    EXPECT_NEAR(plan.assignments[0].terrain.value().safe.value().feet(), 4300, 1e-6);
    const auto about_all = std::count_if(plan.findings.begin(), plan.findings.end(),
                                         [](const Finding& each) { return each.crew.empty(); });
    EXPECT_EQ(about_all, 1) << "what is never checked is said once";
    for (const Finding& finding : plan.findings) {
      if (finding.crew.empty()) {
        EXPECT_EQ(finding.severity, Severity::not_checked);
        EXPECT_THAT(finding.text, HasSubstr("the distance between crews were not checked"));
        continue;
      }
      EXPECT_TRUE(finding.kind == hazard::Kind::climb || finding.severity == Severity::note)
          << finding.text;
    }
    EXPECT_FALSE(hazard::forbids_flight(plan.findings));
  }
}

TEST(Checks, leave_out_what_does_not_fly) {
  Mission mission = mission_at(at(38.25, -117.0));
  const Plan without = make_plan(mission);
  EXPECT_TRUE(without.assignments[2].findings.empty());
  ASSERT_EQ(without.assignments[0].findings.size(), 1u);
  EXPECT_EQ(without.assignments[0].findings[0].severity, Severity::not_checked);
  mission.elevation = flat_earth(1000);
  const Plan with = make_plan(mission);
  EXPECT_FALSE(with.assignments[2].terrain.has_value());
  EXPECT_TRUE(with.assignments[1].terrain.has_value());
}

TEST(Checks, take_the_units_minima_before_the_missions) {
  Mission mission = mission_at(at(38.25, -117.0));
  mission.elevation = flat_earth(1000);
  mission.minima.clearance = Length::feet(2000);
  mission.units[1].minima = hazard::Minima{Length::feet(500), "their rule", {}};
  const Plan plan = make_plan(mission);
  EXPECT_NEAR(plan.assignments[0].terrain.value().safe.value().feet(), 5300, 1e-6);
  EXPECT_NEAR(plan.assignments[1].terrain.value().safe.value().feet(), 3800, 1e-6);
}

TEST(Checks, findings_come_worst_first_and_those_about_all_reach_every_crew) {
  Mission mission = mission_at(at(38.25, -117.0));
  mission.elevation = flat_earth(1000);
  mission.elevation->remarks = {"file: read as metres"};
  mission.units[1].search_altitude = Length::feet(3500);
  const Plan plan = make_plan(mission);
  ASSERT_TRUE(hazard::forbids_flight(plan.findings));
  EXPECT_EQ(plan.findings[0].crew, "Two");
  EXPECT_TRUE(
      std::is_sorted(plan.findings.begin(), plan.findings.end(),
                     [](const Finding& a, const Finding& b) { return a.severity < b.severity; }));
  EXPECT_FALSE(hazard::forbids_flight(plan.assignments[0].findings));
  const std::vector<Finding> of_one = findings_for(plan, plan.assignments[0]);
  EXPECT_THAT(of_one,
              testing::Contains(testing::Field(&Finding::text, HasSubstr("read as metres"))));
}

TEST(Checks, an_impossible_model_is_doubted_to_every_crew) {
  Mission mission = mission_at(at(38.25, -117.0));
  mission.elevation = flat_earth(13'000);
  const Plan plan = make_plan(mission);
  EXPECT_THAT(findings_for(plan, plan.assignments[1]),
              testing::Contains(testing::Field(&Finding::text, HasSubstr("in feet?"))));
}

}  // namespace
}  // namespace sweepwright::plan
