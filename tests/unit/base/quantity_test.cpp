// Quantities: unit definitions against published values, and the promises of base/quantity.hpp.
#include "sweepwright/base/quantity.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <cstdint>

#include "support/check_table.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright {
namespace {

class PublishedUnit : public testing::TestWithParam<test::CheckRow> {};

TEST_P(PublishedUnit, has_its_published_size) {
  const test::CheckRow& row = GetParam();
  const double factor = row.number("factor");
  const std::string& si = row.text("si_unit");
  double size = 0;
  if (si == "m") {
    size = parse_length(row.text("text")).metres();
  } else if (si == "m/s") {
    size = parse_speed(row.text("text")).metres_per_second();
  } else if (si == "s") {
    size = parse_duration(row.text("text")).count();
  } else {
    FAIL() << "unknown unit " << si;
  }
  // Seven printed digits: half a unit of the seventh.
  const double tolerance = row.text("exact") == "yes" ? 1e-15 : 5e-7;
  EXPECT_NEAR(size / factor, 1.0, tolerance);
}

INSTANTIATE_TEST_SUITE_P(Nist, PublishedUnit,
                         testing::ValuesIn(test::check_rows(
                             "base/units.csv", {"unit", "text", "factor", "si_unit", "exact"})),
                         test::RowName());

// NIST SP 811 (2008), appendix B.8, from memory: square mile 2.589988E+06 m2 (rounded); degree
// 1.745329E-02 rad, minute of angle 2.908882E-04 rad (both rounded).
TEST(Quantity, areas_and_angles_have_their_published_size) {
  const Length mile = Length::statute_miles(1);
  EXPECT_NEAR((mile * mile).square_metres(), 2.589988e6, 0.5);
  EXPECT_NEAR(Angle::degrees(1).radians(), 1.745329e-2, 5e-9);
  EXPECT_NEAR(Angle::minutes(1).radians(), 2.908882e-4, 5e-11);
  EXPECT_EQ(Angle::radians(std::acos(-1.0)).degrees(), 180.0);
  EXPECT_EQ(Area::square_kilometres(1), Length::kilometres(1) * Length::kilometres(1));
  EXPECT_EQ(Area::square_nautical_miles(1), Length::nautical_miles(1) * Length::nautical_miles(1));
}

// One arc minute of the WGS 84 meridian is a nautical mile to 0.5 %: the oldest use of the unit.
// Common practice, no source.
TEST(Quantity, a_nautical_mile_is_about_a_minute_of_arc) {
  const double minute = Angle::minutes(1).radians() * kWgs84EquatorialRadiusMetres;
  EXPECT_NEAR(Length::metres(minute).nautical_miles(), 1.0, 0.005);
}

TEST(Quantity, starts_at_zero) {
  EXPECT_EQ(Length(), Length::metres(0));
  EXPECT_EQ(Speed(), Speed::knots(0));
  EXPECT_EQ(Area(), Area::square_metres(0));
  EXPECT_EQ(Angle(), Angle::degrees(0));
}

TEST(Quantity, distance_speed_and_time_go_together) {
  const Length distance = Speed::knots(90) * std::chrono::minutes(20);
  EXPECT_NEAR(distance.nautical_miles(), 30.0, 1e-12);
  EXPECT_NEAR((distance / Speed::knots(90)).count(), 1200.0, 1e-9);
  EXPECT_NEAR((distance / Duration(1200)).knots(), 90.0, 1e-12);
  EXPECT_NEAR((Area::square_nautical_miles(12) / Length::nautical_miles(3)).nautical_miles(), 4.0,
              1e-12);
}

TEST(Quantity, is_ordered_and_added_like_its_number) {
  Length sum = Length::metres(1);
  sum += Length::metres(2);
  EXPECT_EQ(sum, Length::metres(3));
  EXPECT_LT(Length::feet(3), Length::metres(1));
  EXPECT_EQ(-Length::metres(1) + Length::metres(3), 2 * Length::metres(1));
  EXPECT_EQ(Length::metres(3) - Length::metres(1), Length::metres(4) / 2);
  EXPECT_EQ(Length::kilometres(1) / Length::metres(500), 2.0);
}

/// Distance of two numbers in units of the last place of `wanted`.
double ulps(double wanted, double got) {
  const double ulp = std::nextafter(std::abs(wanted), INFINITY) - std::abs(wanted);
  return std::abs(got - wanted) / ulp;
}

/// Doubles of every size whose squares a double still holds.
double any_value() {
  const std::int64_t digits = *rc::gen::inRange<std::int64_t>(1, std::int64_t{1} << 53);
  const int exponent = *rc::gen::inRange(-400, 400);
  const double sign = *rc::gen::element(-1.0, 1.0);
  return sign * std::ldexp(static_cast<double>(digits), exponent);
}

template <typename Q>
void round_trip(Q (*make)(double), double (Q::*read)() const) {
  const double value = any_value();
  RC_ASSERT(ulps(value, (make(value).*read)()) <= 2.0);
}

RC_GTEST_PROP(QuantityRoundTrip, kilometres, ()) {
  round_trip<Length>(&Length::kilometres, &Length::kilometres);
}
RC_GTEST_PROP(QuantityRoundTrip, nautical_miles, ()) {
  round_trip<Length>(&Length::nautical_miles, &Length::nautical_miles);
}
RC_GTEST_PROP(QuantityRoundTrip, statute_miles, ()) {
  round_trip<Length>(&Length::statute_miles, &Length::statute_miles);
}
RC_GTEST_PROP(QuantityRoundTrip, feet, ()) {
  round_trip<Length>(&Length::feet, &Length::feet);
}
RC_GTEST_PROP(QuantityRoundTrip, knots, ()) {
  round_trip<Speed>(&Speed::knots, &Speed::knots);
}
RC_GTEST_PROP(QuantityRoundTrip, kilometres_per_hour, ()) {
  round_trip<Speed>(&Speed::kilometres_per_hour, &Speed::kilometres_per_hour);
}
RC_GTEST_PROP(QuantityRoundTrip, statute_miles_per_hour, ()) {
  round_trip<Speed>(&Speed::statute_miles_per_hour, &Speed::statute_miles_per_hour);
}
RC_GTEST_PROP(QuantityRoundTrip, square_kilometres, ()) {
  round_trip<Area>(&Area::square_kilometres, &Area::square_kilometres);
}
RC_GTEST_PROP(QuantityRoundTrip, square_nautical_miles, ()) {
  round_trip<Area>(&Area::square_nautical_miles, &Area::square_nautical_miles);
}
RC_GTEST_PROP(QuantityRoundTrip, minutes, ()) {
  round_trip<Angle>(&Angle::minutes, &Angle::minutes);
}
RC_GTEST_PROP(QuantityRoundTrip, radians, ()) {
  round_trip<Angle>(&Angle::radians, &Angle::radians);
}

}  // namespace
}  // namespace sweepwright
