// The ramp falls evenly in CIE lightness, so that it survives a black-and-white print.
#include "sweepwright/formats/ramp.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace sweepwright::formats {
namespace {

double linear(std::uint8_t coded) {
  const double c = coded / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

/// CIE 1976 L* of an sRGB colour [CIE 15; IEC 61966-2-1; from memory].
double lightness(Colour colour) {
  const double y =
      0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
  return y > 216.0 / 24389 ? 116 * std::cbrt(y) - 16 : y * 24389 / 27;
}

TEST(Ramp, falls_evenly_in_lightness) {
  const double whole = lightness(ramp_colour(0)) - lightness(ramp_colour(1));
  EXPECT_GT(whole, 70);
  for (int i = 0; i < 10; ++i) {
    const double step = lightness(ramp_colour(i / 10.0)) - lightness(ramp_colour((i + 1) / 10.0));
    EXPECT_NEAR(step, whole / 10, whole / 50) << i;
  }
}

// Red and green stay close together, so that nothing hangs on telling them apart.
TEST(Ramp, needs_no_red_against_green) {
  for (int i = 0; i <= 20; ++i) {
    const Colour colour = ramp_colour(i / 20.0);
    EXPECT_LT(std::abs(colour.red - colour.green), 45) << i;
  }
}

TEST(Ramp, steps_are_round_and_cover_all) {
  const auto classes = ramp_classes(0.123);
  ASSERT_EQ(classes.size(), 6U);
  EXPECT_DOUBLE_EQ(classes[0].least, 0.1);
  EXPECT_EQ(classes[0].label, "10 % or more");
  EXPECT_EQ(classes[1].label, "5 to 10 %");
  EXPECT_EQ(classes[5].label, "under 0.5 %");
  EXPECT_EQ(class_of(0.123, classes), 0U);
  EXPECT_EQ(class_of(0.07, classes), 1U);
  EXPECT_EQ(class_of(0, classes), 5U);
  EXPECT_EQ(ramp_classes(1)[0].label, "100 % or more");
  EXPECT_EQ(class_of(0, ramp_classes(0)), 5U);
}

}  // namespace
}  // namespace sweepwright::formats
