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
  EXPECT_NEAR(pace_of_leg_length(leg, spacing, still_air(aircraft)).vessel_speed.knots(),
              vessel.knots(), 1e-9);
  EXPECT_NEAR(pace_of_vessel(vessel, spacing, still_air(aircraft)).leg_length.nautical_miles(),
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
  // As in a wind along the legs, and some across.
  const LadderSpeeds aircraft{Speed::knots(135), Speed::knots(100), Speed::knots(116)};
  for (const Position& start : test::awkward_places()) {
    for (const double leg_nm : {6.0, 18.0, 40.0}) {
      for (const Turn turn : {Turn::left, Turn::right}) {
        const CoordinatedCreepingLine request{
            start,    TrueDirection::degrees(200),
            spacing,  15,
            aircraft, pace_of_leg_length(Length::nautical_miles(leg_nm), spacing, aircraft),
            turn};
        const Pattern pattern = make_coordinated_creeping_line(request);
        const VesselLine vessel = vessel_line(request);
        const TrueDirection course =
            geodesic(vessel.at_commencement, vessel.at_last_leg).start_track;
        Duration flown{};
        bool out = true;
        for (const Leg& leg : pattern.legs) {
          const Speed speed = leg.kind == LegKind::cross ? aircraft.creep
                              : out                      ? aircraft.out
                                                         : aircraft.back;
          if (leg.kind == LegKind::search) {
            out = !out;
            const Duration time = flown + leg.line.length / 2 / speed;
            const Position middle =
                travel(leg.from, leg.line.start_track, leg.line.length / 2).position;
            const Position met =
                travel(vessel.at_commencement, course, request.pace.vessel_speed * time).position;
            EXPECT_LT(geodesic(middle, met).length / spacing, 0.001);
          }
          flown += leg.line.length / speed;
        }
      }
    }
  }
}

// By hand: 18 NM out at 120 kt and back at 90 kt, 2 NM across at 100 kt: from middle to middle
// 9/120 + 2/100 + 9/90 h = 0.195 h, in which the vessel makes 2 NM: 10.256 kt.
TEST(Coordinated, PaceInWindCountsEachLegAtItsSpeed) {
  const LadderSpeeds aircraft{Speed::knots(120), Speed::knots(90), Speed::knots(100)};
  const Length spacing = Length::nautical_miles(2);
  const Pace pace = pace_of_leg_length(Length::nautical_miles(18), spacing, aircraft);
  EXPECT_NEAR(pace.vessel_speed.knots(), 2 / 0.195, 1e-9);
  EXPECT_NEAR(pace_of_vessel(pace.vessel_speed, spacing, aircraft).leg_length.nautical_miles(), 18,
              1e-9);
}

TEST(Coordinated, SaysWhereTheVesselIsToBe) {
  const Length spacing = Length::nautical_miles(2);
  const LadderSpeeds aircraft = still_air(Speed::knots(120));
  const Pattern pattern = make_coordinated_creeping_line(
      {at(0, 0), TrueDirection(), spacing, 4, aircraft,
       pace_of_leg_length(Length::nautical_miles(18), spacing, aircraft), Turn::right});
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
  EXPECT_THROW(pace_of_vessel(Speed::knots(90), mile, still_air(Speed::knots(90))), Error);
  EXPECT_THROW(pace_of_vessel(Speed(), mile, still_air(Speed::knots(90))), Error);
  EXPECT_THROW(pace_of_vessel(Speed::knots(9), Length(), still_air(Speed::knots(90))), Error);
  EXPECT_THROW(pace_of_leg_length(Length(), mile, still_air(Speed::knots(90))), Error);
  EXPECT_THROW(pace_of_leg_length(mile, mile, LadderSpeeds()), Error);
  EXPECT_THROW(make_coordinated_creeping_line(
                   {at(0, 0), TrueDirection(), mile, 0, still_air(Speed::knots(90)),
                    pace_of_leg_length(mile, mile, still_air(Speed::knots(90))), Turn::right}),
               Error);
}

}  // namespace
}  // namespace sweepwright::pattern
