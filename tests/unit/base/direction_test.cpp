// Directions: the ranges and turns that base/direction.hpp promises.
#include "sweepwright/base/direction.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace sweepwright {
namespace {

TEST(Direction, is_kept_from_0_up_to_360) {
  EXPECT_EQ(TrueDirection::degrees(0).degrees(), 0.0);
  EXPECT_EQ(TrueDirection::degrees(360).degrees(), 0.0);
  EXPECT_EQ(TrueDirection::degrees(-90).degrees(), 270.0);
  EXPECT_EQ(TrueDirection::degrees(725).degrees(), 5.0);
  EXPECT_EQ(TrueDirection::degrees(-720).degrees(), 0.0);
  // So near below north that 360 degrees is the nearest double.
  EXPECT_EQ(TrueDirection::degrees(-1e-20).degrees(), 0.0);
  EXPECT_LT(TrueDirection::degrees(std::nextafter(360.0, 0.0)).degrees(), 360.0);
}

TEST(Direction, turns_clockwise_when_an_angle_is_added) {
  EXPECT_EQ((TrueDirection::degrees(350) + Angle::degrees(20)).degrees(), 10.0);
  EXPECT_EQ((TrueDirection::degrees(10) - Angle::degrees(20)).degrees(), 350.0);
  EXPECT_EQ(MagneticDirection::degrees(30).reversed().degrees(), 210.0);
  EXPECT_EQ(MagneticDirection::degrees(210).reversed().degrees(), 30.0);
}

TEST(Direction, turn_is_the_short_way_and_positive_to_the_right) {
  const auto turn = [](double from, double to) {
    return turn_between(TrueDirection::degrees(from), TrueDirection::degrees(to)).degrees();
  };
  EXPECT_EQ(turn(0, 90), 90.0);
  EXPECT_EQ(turn(0, 270), -90.0);
  EXPECT_EQ(turn(350, 10), 20.0);
  EXPECT_EQ(turn(10, 350), -20.0);
  EXPECT_EQ(turn(45, 45), 0.0);
  EXPECT_EQ(turn(0, 180), -180.0);
  EXPECT_EQ(turn(180, 0), -180.0);
}

TEST(Direction, angles_are_brought_into_either_range) {
  EXPECT_EQ(normalized_180(Angle::degrees(180)).degrees(), -180.0);
  EXPECT_EQ(normalized_180(Angle::degrees(-180)).degrees(), -180.0);
  EXPECT_EQ(normalized_180(Angle::degrees(181)).degrees(), -179.0);
  EXPECT_EQ(normalized_180(Angle::degrees(539)).degrees(), 179.0);
  EXPECT_EQ(normalized_360(Angle::degrees(-1)).degrees(), 359.0);
}

/// Up to some 3000 turns either way, and very near to whole turns.
double any_degrees() {
  const double turns = *rc::gen::inRange(-3000, 3000);
  const double part = *rc::gen::inRange(-360000000, 360000000) / 1e6;
  const double shrink = *rc::gen::element(1.0, 1e-9, 1e-18, 1e-300);
  return *rc::gen::element(0.0, turns * 360) + part * shrink;
}

RC_GTEST_PROP(DirectionPromise, stays_in_range, ()) {
  const double degrees = any_degrees();
  const double full = normalized_360(Angle::degrees(degrees)).degrees();
  const double half = normalized_180(Angle::degrees(degrees)).degrees();
  RC_ASSERT(full >= 0 && full < 360);
  RC_ASSERT(half >= -180 && half < 180);
  // The same direction: its sine and cosine have not changed.
  const double radians = Angle::degrees(degrees).radians();
  RC_ASSERT(std::abs(std::sin(Angle::degrees(full).radians()) - std::sin(radians)) < 1e-9);
  RC_ASSERT(std::abs(std::cos(Angle::degrees(half).radians()) - std::cos(radians)) < 1e-9);
}

RC_GTEST_PROP(DirectionPromise, turning_by_the_turn_arrives, ()) {
  const TrueDirection from = TrueDirection::degrees(any_degrees());
  const TrueDirection to = TrueDirection::degrees(any_degrees());
  const TrueDirection arrived = from + turn_between(from, to);
  RC_ASSERT(std::abs(turn_between(arrived, to).degrees()) < 1e-12);
}

TEST(Direction, NorthIsNeverMinusZero) {
  EXPECT_FALSE(std::signbit(TrueDirection::degrees(-0.0).degrees()));
  EXPECT_FALSE(std::signbit(TrueDirection::degrees(-360.0).degrees()));
}

}  // namespace
}  // namespace sweepwright
