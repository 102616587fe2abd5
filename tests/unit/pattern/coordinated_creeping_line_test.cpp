#include "sweepwright/pattern/coordinated_creeping_line.hpp"

#include <gtest/gtest.h>

#include "pattern_distance.hpp"
#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;

class CoordinatedCheck : public testing::TestWithParam<test::CheckRow> {};

TEST_P(CoordinatedCheck, PaceFollowsTheFormula) {
  const test::CheckRow& row = GetParam();
  const Length spacing = Length::nautical_miles(row.number("spacing_nm"));
  const Length leg = Length::nautical_miles(row.number("leg_nm"));
  const Speed aircraft = Speed::knots(row.number("aircraft_kt"));
  const Speed vessel = Speed::knots(row.number("vessel_kt"));
  EXPECT_NEAR(pace_of_leg_length(leg, spacing, aircraft).vessel_speed.knots(), vessel.knots(),
              1e-9);
  EXPECT_NEAR(pace_of_vessel(vessel, spacing, aircraft).leg_length.nautical_miles(),
              leg.nautical_miles(), 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Formula, CoordinatedCheck,
                         testing::ValuesIn(test::check_rows("pattern/coordinated_creeping_line.csv",
                                                            {"spacing_nm", "leg_nm", "aircraft_kt",
                                                             "vessel_kt"})),
                         test::RowName());

// P1, by dead reckoning of both: the vessel along its line, the aircraft along its legs.
TEST(Coordinated, AircraftPassesTheVesselOnEachLeg) {
  const Length spacing = Length::nautical_miles(2);
  const Speed ground_speed = Speed::knots(120);
  for (const Position& start : test::awkward_places()) {
    for (const double leg_nm : {6.0, 18.0, 40.0}) {
      for (const Turn turn : {Turn::left, Turn::right}) {
        const CoordinatedCreepingLine request{
            start,        TrueDirection::degrees(200),
            spacing,      15,
            ground_speed, pace_of_leg_length(Length::nautical_miles(leg_nm), spacing, ground_speed),
            turn};
        const Pattern pattern = make_coordinated_creeping_line(request);
        const VesselLine vessel = vessel_line(request);
        const TrueDirection course =
            geodesic(vessel.at_commencement, vessel.at_last_leg).start_track;
        Length flown;
        for (const Leg& leg : pattern.legs) {
          if (leg.kind == LegKind::search) {
            const Duration time = (flown + leg.line.length / 2) / ground_speed;
            const Position aircraft =
                travel(leg.from, leg.line.start_track, leg.line.length / 2).position;
            const Position met =
                travel(vessel.at_commencement, course, request.pace.vessel_speed * time).position;
            EXPECT_LT(geodesic(aircraft, met).length / spacing, 0.001);
          }
          flown += leg.line.length;
        }
      }
    }
  }
}

TEST(Coordinated, SaysWhereTheVesselIsToBe) {
  const Length spacing = Length::nautical_miles(2);
  const Speed ground_speed = Speed::knots(120);
  const Pattern pattern = make_coordinated_creeping_line(
      {at(0, 0), TrueDirection(), spacing, 4, ground_speed,
       pace_of_leg_length(Length::nautical_miles(18), spacing, ground_speed), Turn::right});
  ASSERT_EQ(pattern.remarks.size(), 1u);
  // 9 NM up the first leg (9.04 minutes of latitude on the equator), and 0.9 NM behind it: 4.5
  // minutes at 12 kt.
  EXPECT_EQ(
      pattern.remarks[0],
      "the vessel is at 00-09.04N 000-00.90W when the aircraft commences, and makes good 090T "
      "at 12.0 kt; legs are 18.00 NM long");
}

TEST(Coordinated, RefusesWhatCannotBeFlown) {
  const Length mile = Length::nautical_miles(1);
  EXPECT_THROW(pace_of_vessel(Speed::knots(90), mile, Speed::knots(90)), Error);
  EXPECT_THROW(pace_of_vessel(Speed(), mile, Speed::knots(90)), Error);
  EXPECT_THROW(pace_of_vessel(Speed::knots(9), Length(), Speed::knots(90)), Error);
  EXPECT_THROW(pace_of_leg_length(Length(), mile, Speed::knots(90)), Error);
  EXPECT_THROW(pace_of_leg_length(mile, mile, Speed()), Error);
  EXPECT_THROW(make_coordinated_creeping_line({at(0, 0), TrueDirection(), mile, 0, Speed::knots(90),
                                               pace_of_leg_length(mile, mile, Speed::knots(90)),
                                               Turn::right}),
               Error);
}

}  // namespace
}  // namespace sweepwright::pattern
