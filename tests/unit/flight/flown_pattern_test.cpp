#include "sweepwright/flight/flown_pattern.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/pattern/expanding_square.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::flight {
namespace {

using pattern::LegKind;
using pattern::Turn;
using test::at;
using testing::HasSubstr;

const TimePoint kNoon =
    TimePoint(std::chrono::sys_days(std::chrono::year(2026) / 7 / 14)) + std::chrono::hours(12);

pattern::Pattern ladder(Position start, double track, double spacing_nm, int legs) {
  return pattern::make_parallel_track({start, TrueDirection::degrees(track),
                                       Length::nautical_miles(10),
                                       Length::nautical_miles(spacing_nm), legs, Turn::right});
}

Aircraft ninety_knots() {
  return {.true_airspeed = Speed::knots(90), .transit_airspeed = {}, .fuel_flow = {}};
}

WindField wind(double from, double knots) {
  return WindField::uniform({TrueDirection::degrees(from), Speed::knots(knots)});
}

FlyOptions at_noon() {
  return {.depart = kNoon};
}

void expect_totals_are_sums(const FlownPattern& flown) {
  Duration time{};
  Length distance;
  for (const FlownLeg& leg : flown.legs) {
    EXPECT_NEAR(leg.start.count(), time.count(), 1e-6);
    time += leg.time;
    distance += leg.distance;
    if (leg.turn) {
      time += leg.turn->time;
      distance += leg.turn->distance;
    }
    EXPECT_NEAR(leg.end.count(), time.count(), 1e-6);
    EXPECT_NEAR(leg.running_distance.metres(), distance.metres(), 1e-6);
    EXPECT_GE(leg.time.count(), 0);
  }
  EXPECT_NEAR(flown.total_time.count(), time.count(), 1e-6);
  EXPECT_NEAR(flown.total_distance.metres(), distance.metres(), 1e-6);
}

// By hand: 10 NM at 90 kt are 400 s; a half turn at 3 degrees a second is 60 s; the straight part
// of a cross leg of 2 NM is 2 - 0.95493 NM (the turn's diameter): 41.80 s.
TEST(FlownPattern, CalmLadderByHand) {
  const FlownPattern flown = fly(ladder(at(38, -117), 90, 2, 3), ninety_knots(), {}, at_noon());
  ASSERT_EQ(flown.legs.size(), 5u);
  const FlownLeg& first = flown.legs[0];
  EXPECT_NEAR(first.time.count(), 400, 1e-6);
  EXPECT_EQ(first.drawn, 1);
  ASSERT_TRUE(first.turn);
  EXPECT_EQ(first.turn->form, TurnForm::plain);
  EXPECT_NEAR(first.turn->time.count(), 30, 0.05);
  EXPECT_NEAR(first.turn->radius.nautical_miles(), 0.477465, 1e-6);
  EXPECT_NEAR(flown.legs[1].time.count(), (2 - 0.954930) / 90 * 3600, 0.05);
  EXPECT_EQ(flown.legs[1].drawn, 2);
  EXPECT_TRUE(flown.legs[1].joined);
  EXPECT_NEAR(flown.total_time.count(), 3 * 400 + 2 * (60 + 41.8028), 0.1);
  expect_totals_are_sums(flown);
}

// The handbook's triangle: track 090, 120 kt, wind 045/40: heading 076, 88 kt; the way back 116 kt.
TEST(FlownPattern, LegsHaveTheirWindTriangle) {
  Aircraft aircraft = ninety_knots();
  aircraft.true_airspeed = Speed::knots(120);
  const FlownPattern flown = fly(ladder(at(0, 20), 90, 3, 2), aircraft, wind(45, 40), at_noon());
  const FlownLeg& out = flown.legs.front();
  const FlownLeg& back = flown.legs.back();
  EXPECT_NEAR(out.triangle.heading.degrees(), 76.37, 0.01);
  EXPECT_NEAR(out.triangle.ground_speed.knots(), 88.33, 0.01);
  EXPECT_NEAR(out.time.count(), 10 / 88.33 * 3600, 0.05);
  // Back: 120 cos 13.63 + 40 cos 45 = 144.90 kt on heading 270 + 13.63.
  EXPECT_NEAR(back.triangle.ground_speed.knots(), 144.90, 0.01);
  EXPECT_NEAR(back.triangle.heading.degrees(), 283.63, 0.01);
  ASSERT_TRUE(out.magnetic_heading());
  const magnetic::Variation there = magnetic::variation(at(0, 20), kNoon);
  EXPECT_NEAR(
      turn_between(*out.magnetic_heading(), magnetic::to_magnetic(out.triangle.heading, there))
          .degrees(),
      0, 1e-9);
  expect_totals_are_sums(flown);
}

TEST(FlownPattern, P1_TotalsAreSumsEverywhere) {
  for (const Position& place : test::awkward_places()) {
    for (const double spacing : {0.3, 0.9, 2.0}) {
      FlyOptions options = at_noon();
      options.base =
          travel(place, TrueDirection::degrees(200), Length::nautical_miles(30)).position;
      options.drift = Drift{TrueDirection::degrees(80), Speed::knots(1)};
      expect_totals_are_sums(
          fly(ladder(place, 33, spacing, 8), ninety_knots(), wind(310, 25), options));
    }
  }
}

TEST(FlownPattern, P2_ReversedWindAndDirectionMirrorTheTimes) {
  const pattern::Pattern there = ladder(at(0, 10), 0, 2, 6);
  pattern::Pattern back = there;
  std::reverse(back.legs.begin(), back.legs.end());
  for (pattern::Leg& leg : back.legs) leg = pattern::make_leg(leg.kind, leg.to, leg.from);
  const FlownPattern one = fly(there, ninety_knots(), wind(250, 20), at_noon());
  const FlownPattern two = fly(back, ninety_knots(), wind(70, 20), at_noon());
  EXPECT_NEAR(one.total_time.count(), two.total_time.count(), 0.01);
  ASSERT_EQ(one.legs.size(), two.legs.size());
  for (std::size_t i = 0; i < one.legs.size(); ++i) {
    const FlownLeg& forward = one.legs[i];
    const FlownLeg& mirrored = two.legs[two.legs.size() - 1 - i];
    EXPECT_NEAR(forward.time.count(), mirrored.time.count(), 0.01);
    EXPECT_NEAR(forward.triangle.wind_correction.degrees(),
                mirrored.triangle.wind_correction.degrees(), 0.01);
  }
}

TEST(FlownPattern, P4_SquareInCalmAirCutsItsCorners) {
  const Position datum = at(45, 5);
  const pattern::Pattern square = pattern::make_expanding_square(
      {datum, TrueDirection(), Length::nautical_miles(2), 8, Turn::right});
  const FlownPattern flown = fly(square, ninety_knots(), {}, at_noon());
  ASSERT_EQ(flown.legs.size(), 8u);
  // Each of 7 corners: a quarter circle of radius R in place of 2 R.
  const Length radius = flown.legs[0].turn->radius;
  const double saved = 2 - std::numbers::pi / 2;
  EXPECT_NEAR(
      flown.total_distance.nautical_miles(),
      pattern::total_distance(square).nautical_miles() - 7 * saved * radius.nautical_miles(),
      0.001);
  for (std::size_t i = 0; i + 1 < flown.legs.size(); ++i) {
    ASSERT_TRUE(flown.legs[i].turn);
    EXPECT_EQ(flown.legs[i].turn->form, TurnForm::led);
  }
  expect_totals_are_sums(flown);
}

TEST(FlownPattern, CornersThatCannotBeCutAreFlownOver) {
  const pattern::Pattern square = pattern::make_expanding_square(
      {at(45, 5), TrueDirection(), Length::nautical_miles(0.5), 4, Turn::right});
  const FlownPattern flown = fly(square, ninety_knots(), {}, at_noon());
  // Legs of 0.5 NM have no room for leads of 0.48 NM within half of them.
  EXPECT_NE(flown.legs[0].turn->form, TurnForm::led);
  EXPECT_GT(flown.total_time, pattern::total_distance(square) / Speed::knots(90));
  expect_totals_are_sums(flown);
}

// A circle of 2 NM radius as 72 legs of 0.17 NM: bends of 5 degrees, with and without room.
TEST(FlownPattern, ALineOfSmallBendsIsFollowed) {
  const Position middle = at(45, 5);
  for (const int corners : {72, 360}) {
    pattern::Pattern ring;
    const auto corner_at = [&](int i) {
      return travel(middle, TrueDirection::degrees(360.0 * i / corners), Length::nautical_miles(2))
          .position;
    };
    for (int i = 0; i < corners; ++i) {
      ring.legs.push_back(
          pattern::make_leg(LegKind::search, corner_at(i), corner_at((i + 1) % corners)));
    }
    const FlownPattern flown = fly(ring, ninety_knots(), {}, at_noon());
    EXPECT_NEAR(flown.total_time / (pattern::total_distance(ring) / Speed::knots(90)), 1, 0.001);
    EXPECT_EQ(flown.legs.size(), ring.legs.size());
    expect_totals_are_sums(flown);
  }
}

TEST(FlownPattern, CloseRowsAreSkippedAndFilledWhenThatIsQuicker) {
  const pattern::Pattern close = ladder(at(38, -117), 0, 0.4, 12);
  FlyOptions options = at_noon();
  const FlownPattern quickest = fly(close, ninety_knots(), wind(200, 10), options);
  options.order = RowOrder::drawn;
  const FlownPattern drawn = fly(close, ninety_knots(), wind(200, 10), options);
  EXPECT_LT(quickest.total_time, drawn.total_time);
  EXPECT_GE(quickest.skipped_rows, 2);
  EXPECT_EQ(drawn.skipped_rows, 0);
  EXPECT_THAT(quickest.remarks, testing::Contains(HasSubstr("rows are flown in the order 1, ")));
  // Every row is flown once, whatever the order.
  std::multiset<int> rows;
  for (const FlownLeg& leg : quickest.legs) {
    if (leg.drawn && !leg.joined) rows.insert(*leg.drawn);
  }
  EXPECT_THAT(rows, testing::ElementsAre(1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23));
  expect_totals_are_sums(quickest);
}

TEST(FlownPattern, WideRowsAreFlownAsDrawn) {
  const FlownPattern flown =
      fly(ladder(at(38, -117), 0, 2, 12), ninety_knots(), wind(200, 10), at_noon());
  EXPECT_EQ(flown.skipped_rows, 0);
  EXPECT_TRUE(flown.remarks.empty());
}

TEST(FlownPattern, TransitsAreFlownToAndFromTheBase) {
  const pattern::Pattern pattern = ladder(at(38, -117), 0, 2, 4);
  FlyOptions options = at_noon();
  options.base =
      travel(at(38, -117), TrueDirection::degrees(180), Length::nautical_miles(45)).position;
  Aircraft aircraft = ninety_knots();
  aircraft.transit_airspeed = Speed::knots(120);
  const FlownPattern flown = fly(pattern, aircraft, wind(180, 30), options);
  EXPECT_FALSE(flown.legs.front().searching);
  EXPECT_FALSE(flown.legs.back().searching);
  EXPECT_NEAR(flown.arrival.count(), 45 / 150.0 * 3600, 0.1);  // 120 + 30 kt
  EXPECT_NEAR(flown.legs.back().triangle.ground_speed.knots(), 90, 0.5);
  EXPECT_LT(flown.search_end, flown.total_time);
  expect_totals_are_sums(flown);
}

// Along a leg the track turns, most at high latitudes: the time against a fine integration.
TEST(FlownPattern, LongLegsAreTimedAlongTheirChangingTrack) {
  const Wind blowing{TrueDirection::degrees(200), Speed::knots(45)};
  for (const Position& start : {at(70, 10), at(-70, 170), at(0, 0), at(88, 40)}) {
    const Arrival end = travel(start, TrueDirection::degrees(70), Length::nautical_miles(300));
    pattern::Pattern one_leg;
    one_leg.legs = {pattern::make_leg(LegKind::search, start, end.position)};
    const FlownPattern flown = fly(one_leg, ninety_knots(), WindField::uniform(blowing), at_noon());
    const int steps = 3000;
    double seconds = 0;
    for (int i = 0; i < steps; ++i) {
      const Length along = one_leg.legs[0].line.length * ((i + 0.5) / steps);
      const TrueDirection track = travel(start, one_leg.legs[0].line.start_track, along).track;
      const WindTriangle here = triangle_for_track(track, Speed::knots(90), blowing);
      seconds += (one_leg.legs[0].line.length / steps / here.ground_speed).count();
    }
    EXPECT_NEAR(flown.total_time.count() / seconds, 1, 1e-4) << start.latitude().degrees();
  }
}

TEST(FlownPattern, WindThatVariesIsTakenAtTheLegsMiddle) {
  const WindField field(
      {{Length(), kNoon, {TrueDirection::degrees(0), Speed::knots(0)}},
       {Length(), kNoon + std::chrono::hours(1), {TrueDirection::degrees(0), Speed::knots(30)}}});
  pattern::Pattern one_leg;
  one_leg.legs = {pattern::make_leg(LegKind::search, at(0, 0), at(0.5, 0))};
  const FlownPattern flown = fly(one_leg, ninety_knots(), field, at_noon());
  const double first_guess = (one_leg.legs[0].line.length / Speed::knots(90)).count();
  EXPECT_NEAR(flown.legs[0].triangle.ground_speed.knots(), 90 - 30 * first_guess / 2 / 3600, 0.001);
}

TEST(FlownPattern, NamesTheLegThatCannotBeFlown) {
  const auto refusal = [](double from, double knots) {
    try {
      fly(ladder(at(38, -117), 0, 2, 3), ninety_knots(), wind(from, knots), at_noon());
    } catch (const Error& error) {
      return error.where() + ": " + error.message();
    }
    return std::string("flown");
  };
  EXPECT_THAT(refusal(270, 95), HasSubstr("search leg 1: track 000T cannot be flown"));
  EXPECT_THAT(refusal(180, 95), HasSubstr("search leg 1"));
  EXPECT_EQ(refusal(180, 60), "flown");
}

TEST(FlownPattern, SaysWhenTheWindIsNotCovered) {
  FlyOptions options = at_noon();
  options.height = Length::feet(5000);
  const WindField field({{Length::feet(1000), kNoon, {TrueDirection(), Speed::knots(10)}},
                         {Length::feet(3000), kNoon, {TrueDirection(), Speed::knots(20)}}});
  const FlownPattern flown = fly(ladder(at(38, -117), 0, 2, 3), ninety_knots(), field, options);
  EXPECT_THAT(flown.remarks, testing::Contains(HasSubstr("the wind at 5000 ft is not between")));
}

}  // namespace
}  // namespace sweepwright::flight
