#include "sweepwright/flight/turn.hpp"

#include <gtest/gtest.h>

#include <boost/math/special_functions/ellint_2.hpp>
#include <cmath>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/flight/wind.hpp"

namespace sweepwright::flight {
namespace {

using test::CheckRow;

class StandardRate : public testing::TestWithParam<CheckRow> {};

TEST_P(StandardRate, NeedsTheBankAndRadius) {
  const CheckRow& row = GetParam();
  const Speed airspeed = Speed::knots(row.number("tas_kt"));
  EXPECT_NEAR(bank(kStandardRate, airspeed).degrees(), row.number("bank_deg_for_3dps"), 0.015);
  const Length radius = turn_radius(kStandardRate, airspeed);
  EXPECT_NEAR(radius.nautical_miles(), row.number("radius_nm_at_3dps"), 0.00005);
  EXPECT_NEAR(radius.nautical_miles() * 2, row.number("diameter_nm_at_3dps"), 0.00006);
}

INSTANTIATE_TEST_SUITE_P(Rule, StandardRate,
                         testing::ValuesIn(test::check_rows(
                             "flight/turns.csv", {"tas_kt", "bank_deg_for_3dps",
                                                  "radius_nm_at_3dps", "diameter_nm_at_3dps"})),
                         test::RowName());

class TurnAtBank : public testing::TestWithParam<CheckRow> {};

TEST_P(TurnAtBank, HasTheRateAndRadius) {
  const CheckRow& row = GetParam();
  const Speed airspeed = Speed::knots(row.number("tas_kt"));
  const RateOfTurn rate = rate_of_turn(Bank{Angle::degrees(row.number("bank_deg"))}, airspeed);
  EXPECT_NEAR(rate.degrees_per_second(), row.number("rate_deg_per_s"),
              row.number("rate_tolerance_deg_per_s"));
  EXPECT_NEAR(turn_radius(rate, airspeed).feet(), row.number("radius_ft"),
              row.number("radius_tolerance_ft"));
  EXPECT_NEAR(bank(rate, airspeed).degrees(), row.number("bank_deg"), 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Handbook, TurnAtBank,
                         testing::ValuesIn(test::check_rows("flight/turns_at_bank.csv",
                                                            {"tas_kt", "bank_deg", "rate_deg_per_s",
                                                             "rate_tolerance_deg_per_s",
                                                             "radius_ft", "radius_tolerance_ft"})),
                         test::RowName());

TEST(Turn, HalfATurnAtStandardRateTakesAMinute) {
  EXPECT_NEAR(turn_time(kStandardRate, Angle::degrees(180)).count(), 60, 1e-12);
  EXPECT_NEAR(turn_time(kStandardRate, Angle::degrees(-90)).count(), 30, 1e-12);
}

/// Where a crew is after an arc, and how far it flew, by small steps of Simpson's rule.
struct Integrated {
  double east = 0;
  double north = 0;
  double length = 0;
};

Integrated integrate(const Arc& arc, const TurningFlight& flight, int steps) {
  const double time = arc.time(flight.rate).count();
  const auto motion = [&](double t) {
    const double heading = arc.heading.angle().radians() + arc.turned.radians() * t / time;
    return std::pair(flight.true_airspeed.metres_per_second() * std::sin(heading) +
                         flight.wind.east.metres_per_second(),
                     flight.true_airspeed.metres_per_second() * std::cos(heading) +
                         flight.wind.north.metres_per_second());
  };
  Integrated sum;
  for (int i = 0; i <= 2 * steps; ++i) {
    const double weight = (i == 0 || i == 2 * steps ? 1 : i % 2 == 1 ? 4 : 2) * time / steps / 6;
    const auto [east, north] = motion(time * i / (2.0 * steps));
    sum.east += weight * east;
    sum.north += weight * north;
    sum.length += weight * std::hypot(east, north);
  }
  return sum;
}

TEST(Turn, InTheWindAgreesWithIntegration) {
  for (const double share : {0.0, 0.1, 0.5, 0.9}) {
    for (const double turned : {-359.0, -180.0, -20.0, 5.0, 90.0, 240.0}) {
      for (const double heading : {0.0, 77.0, 200.0}) {
        const TurningFlight flight{
            Speed::knots(90), kStandardRate,
            velocity(Wind{TrueDirection::degrees(250), Speed::knots(90) * share})};
        const Arc arc{TrueDirection::degrees(heading), Angle::degrees(turned)};
        const Integrated fine = integrate(arc, flight, 5000);
        const double radius = turn_radius(flight.rate, flight.true_airspeed).metres();
        const Offset way = way_over_ground(arc, flight);
        EXPECT_NEAR(way.east.metres(), fine.east, 1e-7 * radius);
        EXPECT_NEAR(way.north.metres(), fine.north, 1e-7 * radius);
        EXPECT_NEAR(length_over_ground(arc, flight).metres() / fine.length, 1,
                    share > 0.6 ? 3e-5 : 1e-6)
            << share << " " << turned << " " << heading;
      }
    }
  }
}

// The length of a trochoid is an elliptic integral of the second kind: with the angle a between
// heading and wind, |v|^2 = (V + W)^2 - 4 V W sin^2(a / 2). Boost.Math computes it.
TEST(Turn, LengthIsTheEllipticIntegral) {
  const double v = Speed::knots(100).metres_per_second();
  for (const double share : {0.05, 0.3, 0.6, 0.9}) {
    const double w = v * share;
    const double k = 2 * std::sqrt(v * w) / (v + w);
    for (const double turned : {30.0, 120.0, 300.0}) {
      const TurningFlight flight{Speed::knots(100), kStandardRate,
                                 make_velocity(TrueDirection(), Speed::metres_per_second(w))};
      const double half = Angle::degrees(turned).radians() / 2;
      const double rate = Angle::degrees(3).radians();
      const double expected = 2 * (v + w) * boost::math::ellint_2(k, half) / rate;
      const double found =
          length_over_ground({TrueDirection(), Angle::degrees(turned)}, flight).metres();
      EXPECT_NEAR(found / expected, 1, share > 0.6 ? 3e-5 : 1e-6) << share << " " << turned;
    }
  }
}

TEST(Turn, RefusesWhatCannotBeFlown) {
  EXPECT_THROW(rate_of_turn(Bank{Angle::degrees(0)}, Speed::knots(90)), Error);
  EXPECT_THROW(rate_of_turn(Bank{Angle::degrees(90)}, Speed::knots(90)), Error);
  EXPECT_THROW(rate_of_turn(Bank{Angle::degrees(NAN)}, Speed::knots(90)), Error);
  EXPECT_THROW(rate_of_turn(RateOfTurn::degrees_per_second(0), Speed::knots(90)), Error);
  EXPECT_THROW(rate_of_turn(kStandardRate, Speed()), Error);
}

}  // namespace
}  // namespace sweepwright::flight
