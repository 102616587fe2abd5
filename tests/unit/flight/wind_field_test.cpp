#include "sweepwright/flight/wind_field.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "sweepwright/base/error.hpp"

namespace sweepwright::flight {
namespace {

TimePoint hour(int hours) {
  return TimePoint(std::chrono::hours(hours));
}

Wind wind(double from, double knots) {
  return {TrueDirection::degrees(from), Speed::knots(knots)};
}

void expect_wind(Velocity found, const Wind& expected) {
  EXPECT_LT(speed(found - velocity(expected)).knots(), 1e-9);
}

const WindReport kLow{Length::feet(1000), hour(12), wind(360, 20)};
const WindReport kHigh{Length::feet(3000), hour(12), wind(90, 20)};
const WindReport kLater{Length::feet(1000), hour(18), wind(180, 10)};

TEST(WindField, OneWindHoldsEverywhere) {
  const WindField field = WindField::uniform(wind(250, 15));
  expect_wind(field.at(Length::feet(9000), hour(100)), wind(250, 15));
  EXPECT_TRUE(field.covers(Length::feet(9000), hour(100)));
  expect_wind(WindField().at({}, hour(0)), wind(0, 0));
  EXPECT_TRUE(WindField().covers({}, hour(0)));
}

// Half way between a north and an east wind of 20 kt: north-east at 20 cos 45 = 14.1 kt.
TEST(WindField, InterpolatesTheVectorInHeight) {
  const WindField field({kHigh, kLow});
  expect_wind(field.at(Length::feet(2000), hour(0)), wind(45, 20 * std::sqrt(0.5)));
  expect_wind(field.at(Length::feet(1000), hour(0)), kLow.wind);
  expect_wind(field.at(Length::feet(3000), hour(0)), kHigh.wind);
  EXPECT_FALSE(field.varies_in_time());
}

TEST(WindField, InterpolatesInTimeAfterHeight) {
  const WindField field({kLater, kLow, kHigh});
  EXPECT_TRUE(field.varies_in_time());
  expect_wind(field.at(Length::feet(1000), hour(15)), wind(360, 5));  // (20 N + 10 S) / 2
  expect_wind(field.at(Length::feet(1000), hour(12), Duration(3 * 3600)), wind(360, 5));
  // At 3,000 ft: east 20 at 12 h, and the only level, south 10, at 18 h.
  const Velocity third = field.at(Length::feet(3000), hour(14));
  EXPECT_NEAR(third.east.knots(), -20 * 2 / 3.0, 1e-9);
  EXPECT_NEAR(third.north.knots(), 10 / 3.0, 1e-9);
}

TEST(WindField, HoldsTheNearestReportOutsideAndSaysSo) {
  const WindField field({kLow, kHigh, kLater});
  expect_wind(field.at(Length::feet(0), hour(12)), kLow.wind);
  expect_wind(field.at(Length::feet(9000), hour(2)), kHigh.wind);
  expect_wind(field.at(Length::feet(1000), hour(40)), kLater.wind);
  EXPECT_TRUE(field.covers(Length::feet(2000), hour(13)));
  EXPECT_FALSE(field.covers(Length::feet(3500), hour(13)));
  EXPECT_FALSE(field.covers(Length::feet(2000), hour(19)));
}

TEST(WindField, P2_IsContinuous) {
  const WindField field({kLow, kHigh, kLater});
  for (int i = 0; i < 4000; ++i) {
    const Velocity a = field.at(Length::feet(i), hour(12), Duration(5.0 * i));
    const Velocity b = field.at(Length::feet(i + 1), hour(12), Duration(5.0 * i + 5));
    EXPECT_LT(speed(b - a).knots(), 0.1);
  }
}

TEST(WindField, RefusesTwoWindsInOnePlace) {
  EXPECT_THROW(WindField({kLow, kLow}), Error);
  EXPECT_THROW(WindField({{Length(), hour(0), wind(0, -1)}}), Error);
}

}  // namespace
}  // namespace sweepwright::flight
