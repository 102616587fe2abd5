// Variation: true and magnetic, its warnings and its text.
#include "sweepwright/magnetic/variation.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <type_traits>

namespace sweepwright::magnetic {
namespace {

using namespace std::chrono;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr TimePoint kDate = sys_days(2026y / July / 4);

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

Variation of(double degrees_east) {
  return {.angle = Angle::degrees(degrees_east),
          .uncertainty = {},
          .model = "OWN",
          .date = kDate,
          .warnings = {}};
}

TEST(Variation, east_is_least_and_west_is_best) {
  // "Variation east, magnetic least; variation west, magnetic best": the rule of every handbook.
  EXPECT_NEAR(to_magnetic(TrueDirection::degrees(90), of(11)).degrees(), 79, 1e-12);
  EXPECT_NEAR(to_magnetic(TrueDirection::degrees(90), of(-11)).degrees(), 101, 1e-12);
  EXPECT_NEAR(to_magnetic(TrueDirection::degrees(5), of(11)).degrees(), 354, 1e-12);
  EXPECT_NEAR(to_true(MagneticDirection::degrees(355), of(11)).degrees(), 6, 1e-12);
}

RC_GTEST_PROP(Variation, P1_true_to_magnetic_and_back, ()) {
  const TrueDirection there = TrueDirection::degrees(*rc::gen::inRange(0, 36000) / 100.0);
  const Variation turned = of(*rc::gen::inRange(-18000, 18001) / 100.0);
  const TrueDirection back = to_true(to_magnetic(there, turned), turned);
  RC_ASSERT(std::abs(turn_between(there, back).degrees()) < 1e-12);
}

TEST(Variation, directions_of_the_two_norths_are_different_types) {
  static_assert(!std::is_invocable_v<decltype(to_magnetic), MagneticDirection, Variation>);
  static_assert(!std::is_invocable_v<decltype(to_true), TrueDirection, Variation>);
}

TEST(Variation, is_the_declination_of_its_date) {
  const Variation found = variation(at(80, 0), sys_days(2025y / January / 1));
  EXPECT_NEAR(found.angle.degrees(), 1.28, 0.005);  // WMM2025 report, first row of its test table
  EXPECT_EQ(found.model, "WMM-2025");
  EXPECT_THAT(found.warnings, IsEmpty());
}

TEST(Variation, states_its_uncertainty) {
  // sqrt(0.26^2 + (5417 / 20000)^2) = 0.3755, worked by hand.
  for (double longitude = -180; longitude < 180; longitude += 1) {
    const FluxDensity horizontal =
        field(at(50, longitude), {}, to_decimal_year(kDate)).horizontal();
    if (std::abs(horizontal.nanotesla() - 20000) < 50) {
      EXPECT_NEAR(variation(at(50, longitude), kDate).uncertainty.degrees(), 0.3755, 0.001);
      return;
    }
  }
  FAIL() << "no place with a horizontal field of 20000 nT was found";
}

TEST(Variation, warns_outside_the_years_of_the_model) {
  EXPECT_THAT(variation(at(38, -117), sys_days(2024y / December / 31)).warnings,
              ElementsAre(HasSubstr("WMM-2025 holds for 2025.0 to 2030.0, not for 2025.00")));
  EXPECT_THAT(variation(at(38, -117), sys_days(2025y / January / 1)).warnings, IsEmpty());
  EXPECT_THAT(variation(at(38, -117), sys_days(2029y / December / 31)).warnings, IsEmpty());
  EXPECT_THAT(variation(at(38, -117), sys_days(2031y / July / 2)).warnings,
              ElementsAre(HasSubstr("not for 2031.50")));
}

TEST(Variation, warns_near_the_magnetic_poles) {
  // Official test rows: 89 N 121 W has H = 1504 nT, 80 N 96 W has H = 2164 nT (both a little up).
  EXPECT_THAT(variation(at(89, -121), kDate).warnings, ElementsAre(HasSubstr("blackout zone")));
  EXPECT_THAT(variation(at(80, -96), kDate).warnings, ElementsAre(HasSubstr("caution zone")));
  EXPECT_THAT(variation(at(38, -117), kDate).warnings, IsEmpty());
  // At both geographic poles something sensible comes out.
  EXPECT_THAT(variation(at(90, 0), kDate).warnings, ElementsAre(HasSubstr("blackout zone")));
  EXPECT_TRUE(std::isfinite(variation(at(-90, 0), kDate).angle.degrees()));
}

TEST(Variation, is_written_with_model_and_date) {
  EXPECT_EQ(format_variation(of(11.06)), "11.1 E (OWN, 2026-07-04)");
  EXPECT_EQ(format_variation(of(-0.06)), "0.1 W (OWN, 2026-07-04)");
  EXPECT_EQ(format_variation(of(-0.04)), "0.0 E (OWN, 2026-07-04)");
}

}  // namespace
}  // namespace sweepwright::magnetic
