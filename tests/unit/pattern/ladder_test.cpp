#include "sweepwright/pattern/ladder.hpp"

#include <gtest/gtest.h>

#include <GeographicLib/Geodesic.hpp>
#include <cmath>
#include <random>

#include "pattern_distance.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/pattern/creeping_line.hpp"
#include "sweepwright/pattern/parallel_track.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;

LadderFromStart forty_mile_ladder(Position start) {
  return {start,
          TrueDirection::degrees(60),
          Length::nautical_miles(40),
          Length::nautical_miles(2),
          20,
          Turn::right};
}

// A pattern of 40 NM by 40 NM, wherever the Earth is awkward.
TEST(LadderFromStart, IsMetricallyRightAnywhereOnEarth) {
  for (const Position& place : test::awkward_places()) {
    const Pattern pattern = make_ladder(Kind::parallel, forty_mile_ladder(place));
    const std::vector<Leg> legs = search_legs(pattern);
    ASSERT_EQ(legs.size(), 20u);
    ASSERT_EQ(pattern.legs.size(), 39u);
    EXPECT_EQ(commence_search_point(pattern), place);
    for (const Leg& leg : legs) {
      // The length again, with the library's own call: 40 NM is 40 NM.
      double metres = 0;
      GeographicLib::Geodesic::WGS84().Inverse(
          leg.from.latitude().degrees(), leg.from.longitude().degrees(),
          leg.to.latitude().degrees(), leg.to.longitude().degrees(), metres);
      EXPECT_NEAR(metres / 1852, 40, 1e-6);
    }
    for (std::size_t i = 1; i < legs.size(); ++i) {
      for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
        const Position on_leg =
            travel(legs[i].from, legs[i].line.start_track, legs[i].line.length * share).position;
        const double gap = metres_to_leg(on_leg, legs[i - 1]);
        EXPECT_NEAR(gap / (2 * 1852), 1, 0.001) << "leg " << i << " at " << share;
      }
    }
  }
}

TEST(LadderFromStart, StartsOnTheTrackAskedForAndCreepsToTheTurn) {
  for (const Turn turn : {Turn::left, Turn::right}) {
    LadderFromStart request = forty_mile_ladder(at(38, -117));
    request.first_turn = turn;
    const Pattern pattern = make_ladder(Kind::parallel, request);
    EXPECT_NEAR(pattern.legs[0].line.start_track.degrees(), 60, 1e-9);
    const double turned =
        turn_between(pattern.legs[0].line.end_track, pattern.legs[1].line.start_track).degrees();
    EXPECT_NEAR(turned, turn == Turn::right ? 90 : -90, 0.05);
  }
}

TEST(LadderFromStart, LegsFollowOnEachOther) {
  const Pattern pattern = make_ladder(Kind::parallel, forty_mile_ladder(at(-17.5, 179.9)));
  for (std::size_t i = 1; i < pattern.legs.size(); ++i) {
    EXPECT_EQ(pattern.legs[i - 1].to, pattern.legs[i].from);
  }
}

TEST(LadderInRegion, CoversARectangleToHalfASpacing) {
  const Length spacing = Length::nautical_miles(1.5);
  for (const Position& place : test::awkward_places()) {
    const Region sector = test::rectangle(place, TrueDirection::degrees(20),
                                          Length::nautical_miles(24), Length::nautical_miles(10));
    const LocalPlane plane = local_plane(sector, TrueDirection::degrees(20));
    const PlaneRegion laid = to_plane(sector, plane);
    const Pattern outside =
        make_parallel_track(sector, {.spacing = spacing, .turn_room = TurnRoom::outside});
    const Pattern inside = make_parallel_track(sector, {.spacing = spacing});
    std::mt19937 random(7);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int i = 0; i < 100; ++i) {
      const Position point =
          plane.to_position({extent_right(laid).low + extent_right(laid).extent() * unit(random),
                             extent_up(laid).low + extent_up(laid).extent() * unit(random)});
      // Legs that run to the edge: no point farther than half a spacing from a leg.
      EXPECT_LE(metres_to_pattern(point, outside), spacing.metres() / 2 * 1.001);
      // Legs that end half a spacing inside: the same across the legs and along them, so at most
      // the diagonal in the corners.
      EXPECT_LE(metres_to_pattern(point, inside), spacing.metres() / 2 * std::sqrt(2.0) * 1.001);
    }
  }
}

TEST(LadderInRegion, CommencesHalfASpacingInsideTheCorner) {
  const Length spacing = Length::nautical_miles(2);
  const Region sector = test::rectangle(at(45, 7), TrueDirection(), Length::nautical_miles(30),
                                        Length::nautical_miles(12));
  const Pattern pattern = make_parallel_track(
      sector, {.spacing = spacing, .first_track = TrueDirection(), .first_turn = Turn::right});
  const LocalPlane plane = local_plane(sector);
  const PlanePoint start = plane.to_plane(commence_search_point(pattern));
  // South-west corner: the first leg runs north, the pattern creeps east.
  EXPECT_NEAR(start.right.nautical_miles(), -6 + 1, 0.002);
  EXPECT_NEAR(start.up.nautical_miles(), -15 + 1, 0.002);
  EXPECT_EQ(search_leg_count(pattern), 6);
  EXPECT_NEAR(search_distance(pattern).nautical_miles(), 6 * 28, 0.01);
  EXPECT_NEAR(total_distance(pattern).nautical_miles(), 6 * 28 + 5 * 2, 0.01);
  EXPECT_TRUE(pattern.remarks.empty());
}

TEST(LadderInRegion, CreepingLineRunsAlongTheShortSide) {
  const Region sector = test::rectangle(at(45, 7), TrueDirection(), Length::nautical_miles(30),
                                        Length::nautical_miles(12));
  const Pattern pattern = make_creeping_line(sector, {.spacing = Length::nautical_miles(2)});
  EXPECT_EQ(search_leg_count(pattern), 15);
  EXPECT_NEAR(pattern.legs[0].line.length.nautical_miles(), 10, 0.01);
}

TEST(LadderInRegion, SaysWhenTheLastGapIsNarrower) {
  const Region sector = test::rectangle(at(45, 7), TrueDirection(), Length::nautical_miles(30),
                                        Length::nautical_miles(11));
  const Pattern pattern = make_parallel_track(sector, {.spacing = Length::nautical_miles(2)});
  EXPECT_EQ(search_leg_count(pattern), 6);
  ASSERT_EQ(pattern.remarks.size(), 1u);
  EXPECT_NE(pattern.remarks[0].find("1.00 NM"), std::string::npos) << pattern.remarks[0];
}

TEST(LadderInRegion, SpreadsItsLegsEvenlyWhenAsked) {
  for (const double width_nm : {11.0, 10.3, 9.6, 1.2}) {
    const Region sector = test::rectangle(at(45, 7), TrueDirection(), Length::nautical_miles(30),
                                          Length::nautical_miles(width_nm));
    const Pattern pattern =
        make_parallel_track(sector, {.spacing = Length::nautical_miles(2), .gaps = Gaps::even});
    EXPECT_TRUE(pattern.remarks.empty());
    if (width_nm < 2) {
      EXPECT_EQ(search_leg_count(pattern), 1);
      continue;
    }
    EXPECT_NEAR(pattern.spacing.nautical_miles() * search_leg_count(pattern), width_nm, 0.01);
    EXPECT_LE(pattern.spacing.nautical_miles(), 2 * (1 + 0.28 / search_leg_count(pattern)));
    const std::vector<Leg> legs = search_legs(pattern);
    for (std::size_t i = 1; i < legs.size(); ++i) {
      EXPECT_NEAR(metres_to_leg(legs[i].from, legs[i - 1]) / pattern.spacing.metres(), 1, 0.001);
    }
  }
}

TEST(LadderInRegion, CrossesTheGapOfAConcaveAreaAsTransit) {
  // A letter U, open to the north: legs east and west must cross the gap.
  const Region sector =
      make_region({{{at(38, -117), at(38, -116), at(38.5, -116), at(38.5, -116.3), at(38.2, -116.3),
                     at(38.2, -116.7), at(38.5, -116.7), at(38.5, -117)},
                    {}}});
  const Pattern pattern = make_parallel_track(sector, {.spacing = Length::nautical_miles(3),
                                                       .first_track = TrueDirection::degrees(90),
                                                       .first_turn = Turn::left});
  int transits = 0;
  for (const Leg& leg : pattern.legs) {
    if (leg.kind != LegKind::transit) continue;
    ++transits;
    EXPECT_GT(leg.line.length.nautical_miles(), 15);
    EXPECT_FALSE(
        contains(sector, travel(leg.from, leg.line.start_track, leg.line.length / 2).position));
  }
  EXPECT_EQ(transits, 6);
}

TEST(Ladder, RefusesWhatCannotBeFlown) {
  LadderFromStart request = forty_mile_ladder(at(38, -117));
  request.spacing = Length();
  EXPECT_THROW(make_ladder(Kind::parallel, request), Error);
  request = forty_mile_ladder(at(38, -117));
  request.leg_length = Length::metres(-1);
  EXPECT_THROW(make_ladder(Kind::parallel, request), Error);
  request = forty_mile_ladder(at(38, -117));
  request.legs = 0;
  EXPECT_THROW(make_ladder(Kind::parallel, request), Error);
  request.legs = 10000;
  EXPECT_THROW(make_ladder(Kind::parallel, request), Error);
  const Region sector = test::rectangle(at(45, 7), TrueDirection(), Length::nautical_miles(30),
                                        Length::nautical_miles(12));
  EXPECT_THROW(make_parallel_track(sector, {.spacing = Length()}), Error);
  EXPECT_THROW(make_parallel_track(sector, {.spacing = Length::metres(0.5)}), Error);
}

TEST(LegsForWidth, CountsTheLegsThatLeaveNoGap) {
  const Length mile = Length::nautical_miles(1);
  EXPECT_EQ(legs_for_width(mile * 10, mile), 10);
  EXPECT_EQ(legs_for_width(mile * 10.01, mile), 10);
  EXPECT_EQ(legs_for_width(mile * 10.5, mile), 11);
  EXPECT_EQ(legs_for_width(mile * 0.2, mile), 1);
}

}  // namespace
}  // namespace sweepwright::pattern
