#include "sweepwright/plan/plan.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "support/ground.hpp"
#include "support/mission.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/sweep/search_effort.hpp"
#include "sweepwright/sweep/sector_search.hpp"

namespace sweepwright::plan {
namespace {

using test::at;

SearchUnit unit(const std::string& callsign, Speed speed, Duration endurance, Position base) {
  SearchUnit unit;
  unit.callsign = callsign;
  unit.platform = sweep::Platform::fixed_wing;
  unit.search_speed = speed;
  unit.search_height = Length::feet(1000);
  unit.on_scene_endurance = endurance;
  unit.searches_at_night = true;  // at one of the poles it is night
  unit.base = {"Base", base};
  return unit;
}

/// Four aircraft over a rectangle of 30 by 20 NM round a place.
Mission mission_at(Position place) {
  using std::chrono::hours;
  Mission mission = test::mission_without_units(
      test::rectangle(place, TrueDirection::degrees(30), Length::nautical_miles(30),
                      Length::nautical_miles(20)),
      "15min");
  mission.conditions.terrain = sweep::Terrain::hilly;
  const Position base =
      travel(place, TrueDirection::degrees(250), Length::nautical_miles(25)).position;
  mission.units = {unit("One", Speed::knots(90), hours(3), base),
                   unit("Two", Speed::knots(90), hours(2), base),
                   unit("Three", Speed::knots(120), hours(3), base),
                   unit("Four", Speed::knots(100), hours(3), base)};
  return mission;
}

TEST(Plan, TilesTheAreaInProportionToWhatEachUnitCovers) {
  for (const Position& place : test::awkward_places()) {
    const Plan plan = make_plan(mission_at(place));
    double sum = 0;
    double effort = 0;
    for (const Assignment& assignment : plan.assignments) {
      sum += area(assignment.sector) / plan.searched;
      effort += sweep::search_effort(assignment.sweep_width.width, assignment.unit.search_speed,
                                     assignment.search_time) /
                plan.effort;
    }
    EXPECT_NEAR(sum, 1, 1e-6);
    EXPECT_NEAR(effort, 1, 1e-12);
    for (const Assignment& assignment : plan.assignments) {
      const double share =
          sweep::search_effort(assignment.sweep_width.width, assignment.unit.search_speed,
                               assignment.search_time) /
          plan.effort;
      EXPECT_NEAR(area(assignment.sector) / plan.searched, share, 1e-7);
    }
  }
}

TEST(Plan, GivesNoUnitMoreThanItHasTimeFor) {
  for (const Position& place : test::awkward_places()) {
    for (const double coverage : {0.3, 1.0, 5.0}) {
      Mission mission = mission_at(place);
      mission.wanted_coverage = sweep::Coverage(coverage);
      const Plan plan = make_plan(mission);
      for (const Assignment& assignment : plan.assignments) {
        EXPECT_LE(assignment.pattern_time, assignment.search_time);
        const Duration flown = assignment.flown.search_end - assignment.flown.arrival;
        EXPECT_EQ(assignment.pattern_time, flown);
      }
      for (const Assignment& assignment : plan.assignments) {
        // Even gaps: the last strip may be up to three quarters of a spacing short of full.
        const double legs = search_leg_count(assignment.pattern);
        EXPECT_LE(assignment.coverage.value(), coverage * legs / (legs - 0.78));
      }
    }
  }
}

TEST(Plan, EveryFigureFollowsFromTheOthers) {
  const Plan plan = make_plan(mission_at(at(38, -117)));
  for (const Assignment& assignment : plan.assignments) {
    // 85 % of on-scene endurance [Joint Pub 3-50 Vol I para 532.B, seen].
    EXPECT_NEAR(assignment.search_time / assignment.on_scene_endurance, 0.85, 1e-12);
    EXPECT_NEAR(assignment.sweep_width.width / assignment.spacing, assignment.coverage.value(),
                1e-12);
    EXPECT_NEAR(assignment.probability_of_detection.value(),
                1 - std::exp(-assignment.coverage.value()), 1e-12);
    EXPECT_EQ(assignment.pattern.spacing, assignment.spacing);
    EXPECT_FALSE(assignment.cells.empty());
    EXPECT_EQ(
        assignment.way_out.line.length,
        geodesic(assignment.unit.base.position, commence_search_point(assignment.pattern)).length);
  }
  // The worked example of the manuals' formulas: W = 1.5 x 0.7 for 1000 ft, 10 NM, hilly.
  EXPECT_NEAR(plan.assignments[0].sweep_width.width.nautical_miles(), 1.5 * 0.7, 1e-9);
}

TEST(Plan, TakesWaysAndReserveOffTheEndurance) {
  Mission mission = mission_at(at(38, -117));
  for (SearchUnit& unit : mission.units) {
    unit.on_scene_endurance.reset();
    unit.time_away = {std::chrono::minutes(270), std::chrono::minutes(45)};
    unit.transit_speed = Speed::knots(110);
  }
  const Plan plan = make_plan(mission);
  for (const Assignment& assignment : plan.assignments) {
    const Position base = assignment.unit.base.position;
    const Length out = geodesic(base, commence_search_point(assignment.pattern)).length;
    const Length back = geodesic(assignment.pattern.legs.back().to, base).length;
    const double hours = 4.5 - 0.75 - (out + back).nautical_miles() / 110;
    // The turn onto the pattern is part of the way out: within two minutes.
    EXPECT_NEAR(assignment.on_scene_endurance.count(), hours * 3600, 120);
    const Duration ways = assignment.way_out.time + assignment.way_back.time;
    EXPECT_NEAR(assignment.on_scene_endurance.count(), (4.5 - 0.75) * 3600 - ways.count(), 1e-6);
    ASSERT_TRUE(assignment.endurance_use.has_value());
    EXPECT_TRUE(assignment.endurance_use->is_enough());
    EXPECT_NEAR(assignment.search_time / assignment.on_scene_endurance, 0.85, 1e-12);
    EXPECT_LE(assignment.pattern_time, assignment.search_time);
  }
}

TEST(Plan, RefusesAUnitWhoseWaysTakeAllItsEndurance) {
  Mission mission = mission_at(at(38, -117));
  mission.units[1].on_scene_endurance.reset();
  mission.units[1].time_away = {std::chrono::minutes(70), std::chrono::minutes(45)};
  try {
    make_plan(mission);
    FAIL() << "made a plan";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::impossible);
    EXPECT_NE(std::string(error.what()).find("unit Two"), std::string::npos) << error.what();
    EXPECT_NE(error.message().find("leaves no time"), std::string::npos) << error.what();
  }
}

TEST(Plan, FliesAircraftInTheWindAndVesselsWithoutIt) {
  Mission calm = mission_at(at(38, -117));
  Mission windy = calm;
  windy.conditions.wind_from = TrueDirection::degrees(300);
  windy.conditions.wind_speed = Speed::knots(30);
  windy.conditions.terrain = std::nullopt;
  calm.conditions.terrain = std::nullopt;
  for (Mission* mission : {&calm, &windy}) {
    SearchUnit& vessel = mission->units[3];
    vessel.platform = sweep::Platform::vessel;
    vessel.search_height.reset();
    vessel.search_speed = Speed::knots(15);
    for (SearchUnit& unit : mission->units) unit.sweep_width = Length::nautical_miles(1);
  }
  const Plan still = make_plan(calm);
  const Plan blown = make_plan(windy);
  // Back and forth in a wind takes longer than in calm air, by any track.
  const auto slowness = [](const Assignment& assignment) {
    return assignment.pattern_time / pattern::total_distance(assignment.pattern).metres();
  };
  EXPECT_GT(slowness(blown.assignments[0]).count(), slowness(still.assignments[0]).count());
  for (const flight::FlownLeg& leg : blown.assignments[0].flown.legs) {
    EXPECT_NE(leg.triangle.wind_correction, Angle());
  }
  for (const flight::FlownLeg& leg : blown.assignments[3].flown.legs) {
    EXPECT_NEAR(leg.triangle.ground_speed.knots(), 15, 1e-9);
  }
}

TEST(Plan, CutsTheTimeOnSceneAtSunset) {
  // 38 N 117 W on 14 July 2026: sunset 20:03 PDT (03:03 UTC), US Naval Observatory's definition,
  // from the checked daylight of the flight room.
  Mission mission = mission_at(at(38, -117));
  const TimePoint evening = std::chrono::sys_days(std::chrono::year(2026) / 7 / 15);
  for (SearchUnit& unit : mission.units) {
    unit.searches_at_night = false;
    unit.depart = evening + std::chrono::hours(1);
  }
  const Plan cut = make_plan(mission);
  for (const Assignment& assignment : cut.assignments) {
    const TimePoint sunset = assignment.light.day.sun.set.value();
    const Duration left = sunset - assignment.unit.depart.value() - assignment.way_out.time;
    EXPECT_NEAR(assignment.on_scene_endurance.count(), left.count(), 1) << assignment.sector_name;
    EXPECT_LE(assignment.flown.depart + assignment.flown.search_end, sunset + Duration());
  }
  for (SearchUnit& unit : mission.units) unit.searches_at_night = true;
  EXPECT_EQ(make_plan(mission).assignments[0].on_scene_endurance, std::chrono::hours(3));
  for (SearchUnit& unit : mission.units) {
    unit.searches_at_night = false;
    unit.depart = evening + std::chrono::hours(6);
  }
  EXPECT_THROW(make_plan(mission), Error);
}

TEST(Plan, SaysWhenTheMagneticModelDoesNotCoverTheDate) {
  Mission mission = mission_at(at(38, -117));
  const auto day = std::chrono::sys_days(std::chrono::year(1999) / 7 / 14);
  mission.incident.operational_period = {day, day + std::chrono::hours(10)};
  const Plan plan = make_plan(mission);
  const std::vector<std::string>& remarks = plan.assignments[0].remarks;
  EXPECT_TRUE(std::any_of(remarks.begin(), remarks.end(), [](const std::string& remark) {
    return remark.starts_with("no magnetic headings");
  }));
  EXPECT_FALSE(plan.assignments[0].flown.legs[0].magnetic_heading().has_value());
}

TEST(Plan, SaysWhenTheHoursDoNotReachTheWantedCoverage) {
  Mission mission = mission_at(at(38, -117));
  mission.wanted_coverage = sweep::Coverage(9.0);
  const Plan plan = make_plan(mission);
  ASSERT_FALSE(plan.remarks.empty());
  EXPECT_NE(plan.remarks[0].find("wanted coverage of 9.00"), std::string::npos) << plan.remarks[0];
  mission.wanted_coverage = sweep::Coverage(0.5);
  EXPECT_TRUE(make_plan(mission).remarks.empty());
}

TEST(Plan, FliesTheQuickestLadderOfThoseThatFit) {
  Mission mission = mission_at(at(38, -117));
  mission.conditions.wind_from = TrueDirection::degrees(250);
  mission.conditions.wind_speed = Speed::knots(25);
  const Plan free = make_plan(mission);
  for (const PatternChoice choice : {PatternChoice::parallel, PatternChoice::creeping}) {
    for (SearchUnit& unit : mission.units) unit.pattern = choice;
    const Plan asked = make_plan(mission);
    for (std::size_t i = 0; i < free.assignments.size(); ++i) {
      // At one spacing; plans of other patterns may have others.
      if (asked.assignments[i].spacing != free.assignments[i].spacing) continue;
      EXPECT_LE(free.assignments[i].flown.total_time.count(),
                asked.assignments[i].flown.total_time.count() / 0.97 + 1);
    }
  }
  EXPECT_FALSE(free.assignments[0].pattern_reason.empty());
}

TEST(Plan, FliesASmallSectorRoundTheDatumAsASquare) {
  Mission mission = mission_at(at(38, -117));
  mission.area = test::rectangle(at(38, -117), TrueDirection::degrees(0), Length::nautical_miles(5),
                                 Length::nautical_miles(5));
  mission.datum = NamedPlace{"last seen", at(38, -117)};
  mission.units.resize(1);
  EXPECT_EQ(make_plan(mission).assignments[0].pattern.kind, pattern::Kind::square);
  mission.units[0].pattern = PatternChoice::sector;
  const Plan asked = make_plan(mission);
  EXPECT_EQ(asked.assignments[0].pattern.kind, pattern::Kind::sector);
  EXPECT_EQ(commence_search_point(asked.assignments[0].pattern), at(38, -117));
  // Less than its spacing half way out says, by the mean over the disc.
  const Assignment& sector_search = asked.assignments[0];
  const Length radius = sector_search.pattern.legs.front().line.length;
  EXPECT_NEAR(sector_search.probability_of_detection.value(),
              sector_search.searched_share *
                  sweep::sector_search_probability(mission.detection_law,
                                                   sector_search.sweep_width.width, {radius, 3})
                      .value(),
              1e-12);
  EXPECT_LT(sector_search.probability_of_detection,
            sweep::probability_of_detection(mission.detection_law, sector_search.coverage));
  mission.datum.reset();
  EXPECT_THROW(make_plan(mission), Error);
}

/// A datum with a total probable error of 6 NM, in place of an area.
Mission belief_mission(Position datum) {
  Mission mission = mission_at(datum);
  mission.area = {};
  mission.grid = {"gars", "5min"};
  mission.scenarios = {{1, "", belief::Datum{datum, Length::nautical_miles(6)}}};
  return mission;
}

TEST(Plan, SearchesWhereTheBeliefIsWorthMost) {
  for (const Position& place : test::awkward_places()) {
    const Plan plan = make_plan(belief_mission(place));
    ASSERT_TRUE(plan.belief.has_value());
    double contained = 0;
    double success = 0;
    for (const Assignment& assignment : plan.assignments) {
      EXPECT_LE(assignment.pattern_time, assignment.search_time);
      const double poc = assignment.probability_of_containment.value().value();
      EXPECT_GT(poc, 0);
      contained += poc;
      success += poc * assignment.probability_of_detection.value();
    }
    EXPECT_NEAR(plan.belief->probability_of_containment.value(), contained, 1e-12);
    EXPECT_NEAR(plan.belief->probability_of_success.value(), success, 1e-12);
    EXPECT_LE(success, plan.belief->bound.value());
    EXPECT_GT(success, 0.6 * plan.belief->bound.value());
  }
}

TEST(Plan, TellsWhatAGivenAreaHoldsOfTheBelief) {
  // A circular normal of 50 % radius E in a rectangle of 30 by 20 NM about its middle: with
  // s = E / 1.17741, erf(15 / (s sqrt 2)) erf(10 / (s sqrt 2)).
  Mission mission = mission_at(at(38, -117));
  mission.grid = {"gars", "5min"};
  mission.scenarios = {{1, "", belief::Datum{at(38, -117), Length::nautical_miles(6)}}};
  const Plan plan = make_plan(mission);
  const double s = 6 / 1.1774100225154747;
  const double expected = std::erf(15 / (s * std::sqrt(2.0))) * std::erf(10 / (s * std::sqrt(2.0)));
  // Cells count as evenly likely all over: those on the edge make the difference.
  EXPECT_NEAR(plan.belief.value().probability_of_containment.value(), expected, 0.02);
}

TEST(Plan, SaysWhenTheBeliefLiesOutsideTheArea) {
  Mission mission = mission_at(at(38, -117));
  mission.scenarios = {{1, "", belief::Datum{at(42, -117), Length::nautical_miles(6)}}};
  const Plan plan = make_plan(mission);
  EXPECT_EQ(plan.belief.value().probability_of_success.value(), 0);
  ASSERT_FALSE(plan.remarks.empty());
  EXPECT_NE(plan.remarks.back().find("wholly outside"), std::string::npos);
}

TEST(Plan, RefusesAMissionWithNeitherAreaNorBelief) {
  Mission mission = mission_at(at(38, -117));
  mission.area = {};
  EXPECT_THROW(make_plan(mission), Error);
}

TEST(Plan, SaysHowMuchOfASectorAnExpandingSquareLeaves) {
  Mission mission = mission_at(at(38, -117));
  mission.units[0].pattern = PatternChoice::square;
  const Plan plan = make_plan(mission);
  const Assignment& square = plan.assignments[0];
  EXPECT_EQ(square.pattern.kind, pattern::Kind::square);
  EXPECT_LT(square.searched_share, 1);
  EXPECT_NEAR(square.probability_of_detection.value(),
              square.searched_share * (1 - std::exp(-square.coverage.value())), 1e-12);
  ASSERT_FALSE(square.remarks.empty());
  EXPECT_TRUE(std::any_of(square.remarks.begin(), square.remarks.end(), [](const auto& remark) {
    return remark.find("not searched") != std::string::npos;
  }));
  EXPECT_LE(square.pattern_time, square.search_time);
}

TEST(Plan, KeepsToTheLegDirectionAskedFor) {
  Mission mission = mission_at(at(38, -117));
  mission.leg_direction = TrueDirection::degrees(120);
  for (const Assignment& assignment : make_plan(mission).assignments) {
    const TrueDirection track = assignment.pattern.legs[0].line.start_track;
    const Angle off = turn_between(track, TrueDirection::degrees(120));
    EXPECT_NEAR(normalized_180(off * 2).degrees(), 0, 1);
  }
}

TEST(Plan, TakesTheSweepWidthThatThePlannerGives) {
  Mission mission = mission_at(at(38, -117));
  mission.units[0].sweep_width = Length::nautical_miles(0.8);
  mission.units[0].sweep_width_source = "trial";
  const Plan plan = make_plan(mission);
  EXPECT_NEAR(plan.assignments[0].sweep_width.width.nautical_miles(), 0.8, 1e-12);
}

TEST(Plan, CorrectsAnUncorrectedSweepWidthThatThePlannerGives) {
  // By hand: 1.6 NM, wind 18 kt in table D-1 of Joint Pub 3-50 for a boat of 23 ft: 0.5; fatigue
  // 0.9; no speed factor for a boat.
  Mission mission = mission_at(test::at(-16, 180));
  mission.object.table_name = "Boat 7 m (23 ft)";
  mission.conditions.wind_speed = Speed::knots(18);
  mission.conditions.weather_table = "us-1991";
  for (SearchUnit& unit : mission.units) {
    unit.platform = sweep::Platform::small_boat;
    unit.search_height.reset();
    unit.sweep_width = Length::nautical_miles(1.6);
    unit.sweep_width_is_corrected = false;
    unit.fatigued = true;
  }
  const Plan plan = make_plan(mission);
  EXPECT_NEAR(plan.assignments.at(0).sweep_width.width.nautical_miles(), 1.6 * 0.5 * 0.9, 1e-12);
}

TEST(Plan, IsTheSameEveryTime) {
  const Plan first = make_plan(mission_at(at(-17.5, 179.9)));
  const Plan second = make_plan(mission_at(at(-17.5, 179.9)));
  ASSERT_EQ(first.assignments.size(), second.assignments.size());
  for (std::size_t i = 0; i < first.assignments.size(); ++i) {
    EXPECT_EQ(first.assignments[i].sector, second.assignments[i].sector);
    EXPECT_EQ(pattern::path(first.assignments[i].pattern),
              pattern::path(second.assignments[i].pattern));
  }
}

TEST(Plan, NamesTheUnitThatCannotDoItsPart) {
  Mission mission = mission_at(at(38, -117));
  mission.units[1].on_scene_endurance = std::chrono::seconds(20);
  try {
    make_plan(mission);
    FAIL() << "an endurance of 20 seconds was accepted";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::impossible);
    EXPECT_EQ(error.where(), "unit Two");
  }
  mission = mission_at(at(38, -117));
  mission.object.table_name = "Person";
  mission.units[2].search_height = Length::feet(3000);
  EXPECT_THROW(make_plan(mission), Error);
}

}  // namespace
}  // namespace sweepwright::plan
