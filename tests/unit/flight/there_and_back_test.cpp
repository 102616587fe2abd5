#include "sweepwright/flight/there_and_back.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <GeographicLib/Geodesic.hpp>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::flight {
namespace {

using test::at;

const TimePoint kNoon =
    TimePoint(std::chrono::sys_days(std::chrono::year(2026) / 7 / 14)) + std::chrono::hours(12);

WayConditions in_wind(double from, double knots) {
  return {.depart = kNoon,
          .true_airspeed = Speed::knots(120),
          .wind = WindField::uniform({TrueDirection::degrees(from), Speed::knots(knots)})};
}

TEST(ThereAndBack, DistanceAndBearingsAreThoseOfTheLibrary) {
  for (const auto& [a, b] :
       {std::pair(at(38, -117), at(39, -115)), std::pair(at(-10, 179), at(-12, -178)),
        std::pair(at(80, 0), at(80, 90))}) {
    double metres = 0;
    double start = 0;
    double end = 0;
    GeographicLib::Geodesic::WGS84().Inverse(a.latitude().degrees(), a.longitude().degrees(),
                                             b.latitude().degrees(), b.longitude().degrees(),
                                             metres, start, end);
    const ThereAndBack found = there_and_back(a, b, {.depart = kNoon});
    EXPECT_NEAR(found.out.line.length.metres(), metres, 1e-6);
    EXPECT_NEAR(found.back.line.length.metres(), metres, 1e-6);
    EXPECT_NEAR(turn_between(found.out.line.start_track, TrueDirection::degrees(start)).degrees(),
                0, 1e-9);
    EXPECT_NEAR(
        turn_between(found.back.line.start_track, TrueDirection::degrees(end + 180)).degrees(), 0,
        1e-9);
    EXPECT_FALSE(found.out.flown);
    const double variation = magnetic::variation(a, kNoon).angle.degrees();
    EXPECT_NEAR(
        turn_between(MagneticDirection::degrees(start - variation), found.out.magnetic_bearing())
            .degrees(),
        0, 1e-9);
  }
}

// On the equator 60 NM east at 120 kt in 30 kt of headwind: 90 kt out, 150 kt back.
TEST(ThereAndBack, TimesByHand) {
  const Position a = at(0, 0);
  const Position b = travel(a, TrueDirection::degrees(90), Length::nautical_miles(60)).position;
  const ThereAndBack found = there_and_back(a, b, in_wind(90, 30));
  ASSERT_TRUE(found.out.flown && found.back.flown);
  EXPECT_NEAR(found.out.flown->time.count(), 40 * 60, 0.01);
  EXPECT_NEAR(found.back.flown->time.count(), 24 * 60, 0.01);
}

TEST(ThereAndBack, P1_TheOtherWayRoundIsTheSameTwoWays) {
  const Position a = at(60, 10);
  const Position b = at(62, 14);
  const ThereAndBack one = there_and_back(a, b, in_wind(310, 25));
  const ThereAndBack two = there_and_back(b, a, in_wind(310, 25));
  EXPECT_NEAR(one.out.flown->time.count(), two.back.flown->time.count(), 1e-6);
  EXPECT_NEAR(one.back.flown->time.count(), two.out.flown->time.count(), 1e-6);
}

TEST(ThereAndBack, NamesTheWayThatCannotBeFlown) {
  const auto refusal = [](double from) {
    try {
      there_and_back(at(0, 0), at(0, 1), in_wind(from, 130));
    } catch (const Error& error) {
      return error.where();
    }
    return std::string("flown");
  };
  EXPECT_EQ(refusal(90), "the way out");
  EXPECT_EQ(refusal(270), "the way back");
}

}  // namespace
}  // namespace sweepwright::flight
