// Quantities as text: every spelling, every refusal, and the printed forms. Unit sizes are checked
// against published values in quantity_test.cpp; the syntax is the project's own.
#include "sweepwright/base/quantity_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <clocale>
#include <cmath>
#include <string>

#include "sweepwright/base/error.hpp"

namespace sweepwright {
namespace {

using testing::HasSubstr;

constexpr double kKnot = 1852.0 / 3600;
constexpr double kMilePerHour = 1609.344 / 3600;

TEST(LengthText, every_unit_is_read) {
  for (const char* text :
       {"12NM", "12 NM", "12nm", "12 nmi", " 12Nm ", "+12NM", "12.0NM", "12.NM"}) {
    EXPECT_EQ(parse_length(text), Length::nautical_miles(12)) << text;
  }
  EXPECT_EQ(parse_length("12.5km").metres(), 12500.0);
  EXPECT_EQ(parse_length(".5 KM").metres(), 500.0);
  EXPECT_EQ(parse_length("300m").metres(), 300.0);
  EXPECT_EQ(parse_length("300 metres").metres(), 300.0);
  for (const char* text : {"8mi", "8 SM", "8sm"}) {
    EXPECT_EQ(parse_length(text), Length::statute_miles(8)) << text;
  }
  for (const char* text : {"500ft", "500 FT", "500feet", "500 foot"}) {
    EXPECT_EQ(parse_length(text), Length::feet(500)) << text;
  }
  EXPECT_EQ(parse_length("-3m").metres(), -3.0);
  EXPECT_EQ(parse_length("0m").metres(), 0.0);
}

TEST(SpeedText, every_unit_is_read) {
  for (const char* text : {"90kt", "90 kts", "90 knots", "90KT", "90knot"}) {
    EXPECT_DOUBLE_EQ(parse_speed(text).metres_per_second(), 90 * kKnot) << text;
  }
  EXPECT_DOUBLE_EQ(parse_speed("100mph").metres_per_second(), 100 * kMilePerHour);
  for (const char* text : {"36km/h", "36 kmh", "36kph", "36KM/H"}) {
    EXPECT_DOUBLE_EQ(parse_speed(text).metres_per_second(), 10.0) << text;
  }
  for (const char* text : {"25m/s", "25 mps"}) {
    EXPECT_EQ(parse_speed(text).metres_per_second(), 25.0) << text;
  }
}

TEST(DurationText, every_form_is_read) {
  struct Case {
    const char* text;
    double seconds;
  };
  for (const Case& one : {Case{"2h", 7200},         Case{"2 hours", 7200}, Case{"1hr", 3600},
                          Case{"90min", 5400},      Case{"90 mins", 5400}, Case{"5 minutes", 300},
                          Case{"45s", 45},          Case{"45 sec", 45},    Case{"45 seconds", 45},
                          Case{"1h30", 5400},       Case{"1h 30", 5400},   Case{"1h30min", 5400},
                          Case{"1H30MIN15S", 5415}, Case{"1h15s", 3615},   Case{"2min30s", 150},
                          Case{"0.5h", 1800},       Case{"1:30", 5400},    Case{"0:05", 300},
                          Case{"12:00", 43200},     Case{"0h", 0},         Case{"-45s", -45},
                          Case{"-1h30", -5400},     Case{"100h", 360000}}) {
    EXPECT_EQ(parse_duration(one.text).count(), one.seconds) << one.text;
  }
}

TEST(DirectionText, the_north_is_part_of_it) {
  const auto true_degrees = [](const char* text) {
    return std::get<TrueDirection>(parse_direction(text)).degrees();
  };
  const auto magnetic_degrees = [](const char* text) {
    return std::get<MagneticDirection>(parse_direction(text)).degrees();
  };
  EXPECT_EQ(true_degrees("045T"), 45.0);
  EXPECT_EQ(true_degrees("45.5 true"), 45.5);
  EXPECT_EQ(true_degrees("0t"), 0.0);
  EXPECT_EQ(true_degrees("360T"), 0.0);
  EXPECT_EQ(magnetic_degrees("030M"), 30.0);
  EXPECT_EQ(magnetic_degrees("30 magnetic"), 30.0);
  EXPECT_EQ(magnetic_degrees("30mag"), 30.0);
}

struct Refusal {
  enum Reader { length, speed, duration, direction, number, legs } reader;
  const char* text;
  const char* message;
};

void read(const Refusal& refusal) {
  switch (refusal.reader) {
    case Refusal::length:
      parse_length(refusal.text);
      break;
    case Refusal::speed:
      parse_speed(refusal.text);
      break;
    case Refusal::duration:
      parse_duration(refusal.text);
      break;
    case Refusal::direction:
      parse_direction(refusal.text);
      break;
    case Refusal::number:
      parse_number(refusal.text, "coverage");
      break;
    case Refusal::legs:
      parse_whole_number(refusal.text, 1, 20, "a number of legs");
      break;
  }
}

class Refused : public testing::TestWithParam<Refusal> {};

TEST_P(Refused, with_what_was_found_and_how_to_mend_it) {
  try {
    read(GetParam());
    FAIL() << "was read: " << GetParam().text;
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::value);
    EXPECT_THAT(error.message(), HasSubstr(GetParam().message));
    EXPECT_THAT(error.hint(), HasSubstr("write "));
  }
}

INSTANTIATE_TEST_SUITE_P(
    Length, Refused,
    testing::Values(Refusal{Refusal::length, "", "is empty"},
                    Refusal{Refusal::length, "  ", "is empty"},
                    Refusal{Refusal::length, "12", "'12' has no unit"},
                    Refusal{Refusal::length, "NM", "does not start with a number"},
                    Refusal{Refusal::length, "twelve NM", "does not start with a number"},
                    Refusal{Refusal::length, "12 furlongs", "unknown unit 'furlongs'"},
                    Refusal{Refusal::length, "12kt", "unknown unit 'kt'"},
                    Refusal{Refusal::length, "12NM5", "unknown unit 'NM5'"},
                    Refusal{Refusal::length, "1,5NM", "unknown unit ',5NM'"},
                    Refusal{Refusal::length, "1e3m", "unknown unit 'e3m'"},
                    Refusal{Refusal::length, "0x10m", "unknown unit 'x10m'"},
                    Refusal{Refusal::length, "nanNM", "does not start with a number"},
                    Refusal{Refusal::length, "infkm", "does not start with a number"},
                    Refusal{Refusal::length, "-infinity km", "does not start with a number"},
                    Refusal{Refusal::length, "+-5NM", "does not start with a number"},
                    Refusal{Refusal::length, "--5NM", "does not start with a number"},
                    Refusal{Refusal::length, "- 5NM", "does not start with a number"},
                    Refusal{Refusal::length, ".NM", "does not start with a number"},
                    // M is the mariner's nautical mile and others' metre or statute mile.
                    Refusal{Refusal::length, "5M", "unknown unit 'M'"}));

INSTANTIATE_TEST_SUITE_P(Speed, Refused,
                         testing::Values(Refusal{Refusal::speed, "", "is empty"},
                                         Refusal{Refusal::speed, "90", "has no unit"},
                                         Refusal{Refusal::speed, "90NM", "unknown unit 'NM'"},
                                         Refusal{Refusal::speed, "90k", "unknown unit 'k'"},
                                         Refusal{Refusal::speed, "nan kt",
                                                 "does not start with a number"}));

INSTANTIATE_TEST_SUITE_P(
    Duration, Refused,
    testing::Values(Refusal{Refusal::duration, "", "is empty"},
                    Refusal{Refusal::duration, "90", "has no unit"},
                    Refusal{Refusal::duration, "h", "is not a time"},
                    Refusal{Refusal::duration, "2d", "unknown unit 'd'"},
                    Refusal{Refusal::duration, "30min1h", "out of order"},
                    Refusal{Refusal::duration, "1h1h", "out of order"},
                    Refusal{Refusal::duration, "30min20", "has no unit"},
                    Refusal{Refusal::duration, "1h75", "60 or more"},
                    Refusal{Refusal::duration, "1h60min", "60 or more"},
                    Refusal{Refusal::duration, "1h-5min", "is not a time"},
                    Refusal{Refusal::duration, "1h+5min", "is not a time"},
                    Refusal{Refusal::duration, "1.5h30", "a fraction before a smaller unit"},
                    Refusal{Refusal::duration, "1:3", "is not hours and minutes"},
                    Refusal{Refusal::duration, "1:", "is not hours and minutes"},
                    Refusal{Refusal::duration, "1:60", "is not hours and minutes"},
                    Refusal{Refusal::duration, "1:+5", "is not hours and minutes"},
                    Refusal{Refusal::duration, "1:5.", "is not hours and minutes"},
                    Refusal{Refusal::duration, "1.5:30", "is not hours and minutes"},
                    Refusal{Refusal::duration, "1:30:00", "is not hours and minutes"},
                    Refusal{Refusal::duration, "1h;", "is not a time"},
                    Refusal{Refusal::duration, "nan h", "is not a time"}));

INSTANTIATE_TEST_SUITE_P(
    Direction, Refused,
    testing::Values(Refusal{Refusal::direction, "", "is empty"},
                    Refusal{Refusal::direction, "45", "does not say true or magnetic"},
                    Refusal{Refusal::direction, "north", "does not start with a number"},
                    Refusal{Refusal::direction, "361T", "is not from 0 to 360"},
                    Refusal{Refusal::direction, "-1T", "is not from 0 to 360"},
                    Refusal{Refusal::direction, "45G", "unknown north 'G'"},
                    Refusal{Refusal::direction, "45TT", "unknown north 'TT'"},
                    Refusal{Refusal::direction, "nanT", "does not start with a number"}));

INSTANTIATE_TEST_SUITE_P(
    Number, Refused,
    testing::Values(Refusal{Refusal::number, "", "is not a number"},
                    Refusal{Refusal::number, "1.5x", "is not a number"},
                    Refusal{Refusal::number, "50%", "is not a number"},
                    Refusal{Refusal::number, "nan", "is not a number"},
                    Refusal{Refusal::number, "inf", "is not a number"},
                    Refusal{Refusal::number, "1 2", "is not a number"},
                    Refusal{Refusal::legs, "", "cannot be a number of legs"},
                    Refusal{Refusal::legs, "0", "cannot be a number of legs"},
                    Refusal{Refusal::legs, "21", "cannot be a number of legs"},
                    Refusal{Refusal::legs, "-3", "cannot be a number of legs"},
                    Refusal{Refusal::legs, "3.0", "cannot be a number of legs"},
                    Refusal{Refusal::legs, "99999999999", "cannot be a number of legs"}));

// The largest double is near 1.8e308 [IEEE 754, binary64].
TEST(QuantityText, refuses_what_no_double_holds) {
  const std::string digits(309, '9');
  EXPECT_THROW(parse_length(digits + "m"), Error);
  const std::string just_fits = "1" + std::string(308, '0');
  EXPECT_EQ(parse_length(just_fits + "m").metres(), 1e308);
  EXPECT_THROW(parse_length(just_fits + "km"), Error);
  EXPECT_THROW(parse_duration(just_fits + "h"), Error);
  EXPECT_THROW(parse_duration(just_fits + ":30"), Error);
}

TEST(QuantityText, message_shows_no_control_characters) {
  try {
    parse_length("12\x1B[31m");
    FAIL();
  } catch (const Error& error) {
    EXPECT_EQ(error.message(), "'12?[31m' has the unknown unit '?[31m'");
  }
}

TEST(NumberText, plain_numbers_are_read) {
  EXPECT_EQ(parse_number("1.5", "coverage"), 1.5);
  EXPECT_EQ(parse_number(" -2 ", "coverage"), -2.0);
  EXPECT_EQ(parse_whole_number("1", 1, 20, "legs"), 1);
  EXPECT_EQ(parse_whole_number(" 20 ", 1, 20, "legs"), 20);
}

// 1 NM2 = 1852^2 m2, 1 mi2 = 1609.344^2 m2, 1 ha = 10^4 m2, by definition.
TEST(AreaText, every_unit_is_read) {
  for (const char* text : {"400NM2", "400 nm2", "400 NM^2", "400nmi2", "400 sq NM", "400sqNM"}) {
    EXPECT_DOUBLE_EQ(parse_area_size(text).square_metres(), 400 * 1852.0 * 1852.0) << text;
  }
  for (const char* text : {"1.5km2", "1.5 km^2", "1.5 sq km", "150ha", "1500000 m2"}) {
    EXPECT_DOUBLE_EQ(parse_area_size(text).square_kilometres(), 1.5) << text;
  }
  EXPECT_DOUBLE_EQ(parse_area_size("2 sq mi").square_metres(), 2 * 1609.344 * 1609.344);
  for (const char* text : {"400", "400NM", "NM2", "", "400 acres", "1e3km2"}) {
    EXPECT_THROW(parse_area_size(text), Error) << text;
  }
}

TEST(LengthText, is_written_with_its_unit) {
  const Length mile = Length::metres(1852);
  EXPECT_EQ(format_length(mile, LengthUnit::nautical_mile, 2), "1.00 NM");
  EXPECT_EQ(format_length(mile, LengthUnit::kilometre, 3), "1.852 km");
  EXPECT_EQ(format_length(mile, LengthUnit::statute_mile, 4), "1.1508 mi");
  EXPECT_EQ(format_length(mile, LengthUnit::metre, 0), "1852 m");
  EXPECT_EQ(format_length(mile, LengthUnit::foot, 0), "6076 ft");
}

TEST(LengthText, is_rounded_half_away_from_zero_and_never_minus_zero) {
  EXPECT_EQ(format_length(Length::metres(0.5), LengthUnit::metre, 0), "1 m");
  EXPECT_EQ(format_length(Length::metres(1.5), LengthUnit::metre, 0), "2 m");
  EXPECT_EQ(format_length(Length::metres(2.5), LengthUnit::metre, 0), "3 m");
  EXPECT_EQ(format_length(Length::metres(-2.5), LengthUnit::metre, 0), "-3 m");
  EXPECT_EQ(format_length(Length::metres(-0.04), LengthUnit::metre, 1), "0.0 m");
  EXPECT_EQ(format_length(Length::metres(0.125), LengthUnit::metre, 2), "0.13 m");
}

TEST(SpeedText, is_written_with_its_unit) {
  const Speed speed = Speed::metres_per_second(50);
  EXPECT_EQ(format_speed(speed, SpeedUnit::knot, 1), "97.2 kt");
  EXPECT_EQ(format_speed(speed, SpeedUnit::kilometre_per_hour, 0), "180 km/h");
  EXPECT_EQ(format_speed(speed, SpeedUnit::statute_mile_per_hour, 1), "111.8 mph");
  EXPECT_EQ(format_speed(speed, SpeedUnit::metre_per_second, 0), "50 m/s");
}

TEST(DurationText, is_written_in_hours_minutes_seconds) {
  EXPECT_EQ(format_duration(Duration(0)), "0:00:00");
  EXPECT_EQ(format_duration(Duration(309)), "0:05:09");
  EXPECT_EQ(format_duration(Duration(45000)), "12:30:00");
  EXPECT_EQ(format_duration(Duration(3599.6)), "1:00:00");
  EXPECT_EQ(format_duration(Duration(-309)), "-0:05:09");
  EXPECT_EQ(format_duration(Duration(-0.4)), "0:00:00");
  EXPECT_EQ(format_duration_minutes(Duration(9180)), "2:33");
  EXPECT_EQ(format_duration_minutes(Duration(3599)), "1:00");
  EXPECT_EQ(format_duration_minutes(Duration(29)), "0:00");
  EXPECT_EQ(format_duration_minutes(Duration(-5400)), "-1:30");
}

TEST(DirectionText, is_written_with_three_digits_and_its_north) {
  EXPECT_EQ(format_direction(TrueDirection::degrees(45)), "045T");
  EXPECT_EQ(format_direction(TrueDirection::degrees(0)), "000T");
  EXPECT_EQ(format_direction(TrueDirection::degrees(359.6)), "000T");
  EXPECT_EQ(format_direction(MagneticDirection::degrees(29.5)), "030M");
}

TEST(QuantityText, does_not_follow_the_locale) {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  // A locale with a decimal comma, where the machine has one.
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "C.UTF-8"}) {
    if (std::setlocale(LC_ALL, name) != nullptr) break;
  }
  EXPECT_EQ(parse_length("1.5km").metres(), 1500.0);
  EXPECT_EQ(format_length(Length::metres(1500), LengthUnit::kilometre, 1), "1.5 km");
  std::setlocale(LC_ALL, before.c_str());
}

/// Half a unit of the sixth decimal place, and what doubles lose on the way.
void same_after_writing(double wanted, double got) {
  RC_ASSERT(std::abs(got - wanted) <= 5.1e-7 + std::abs(wanted) * 1e-14);
}

double plain_value() {
  return *rc::gen::inRange(-100000000, 100000000) / 997.0;
}

RC_GTEST_PROP(QuantityTextRoundTrip, what_is_written_is_read_back, ()) {
  const double value = plain_value();
  for (const LengthUnit unit : {LengthUnit::nautical_mile, LengthUnit::kilometre,
                                LengthUnit::statute_mile, LengthUnit::metre, LengthUnit::foot}) {
    const Length length = parse_length(format_length(Length::metres(value), unit, 6));
    const double largest_unit = 1852;
    RC_ASSERT(std::abs(length.metres() - value) <= 5.1e-7 * largest_unit);
  }
  same_after_writing(value,
                     parse_length(format_length(Length::feet(value), LengthUnit::foot, 6)).feet());
  same_after_writing(value,
                     parse_speed(format_speed(Speed::knots(value), SpeedUnit::knot, 6)).knots());
  same_after_writing(value, parse_speed(format_speed(Speed::kilometres_per_hour(value),
                                                     SpeedUnit::kilometre_per_hour, 6))
                                .kilometres_per_hour());
  same_after_writing(value, parse_speed(format_speed(Speed::statute_miles_per_hour(value),
                                                     SpeedUnit::statute_mile_per_hour, 6))
                                .statute_miles_per_hour());
}

RC_GTEST_PROP(QuantityTextRoundTrip, whole_minutes_come_back, ()) {
  const int minutes = *rc::gen::inRange(-6000, 6000);
  const Duration duration(60.0 * minutes);
  RC_ASSERT(parse_duration(format_duration_minutes(duration)) == duration);
}

RC_GTEST_PROP(QuantityTextRoundTrip, whole_degrees_come_back, ()) {
  const TrueDirection direction = TrueDirection::degrees(*rc::gen::inRange(0, 360));
  RC_ASSERT(std::get<TrueDirection>(parse_direction(format_direction(direction))) == direction);
}

}  // namespace
}  // namespace sweepwright
