#include "sweepwright/formats/ramp.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace sweepwright::formats {
namespace {

struct OkLab {
  double lightness;
  double green_red;
  double blue_yellow;
};
constexpr OkLab kLittle{0.96, -0.01, 0.07};
constexpr OkLab kMuch{0.27, -0.01, -0.09};

constexpr int kClasses = 6;

std::uint8_t srgb(double linear) {
  const double light = std::clamp(linear, 0.0, 1.0);
  const double coded =
      light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1 / 2.4) - 0.055;
  return static_cast<std::uint8_t>(std::lround(255 * coded));
}

double cubed(double value) {
  return value * value * value;
}

/// The next smaller of 1, 2, 5 times a power of ten. `step` counts them: 0 is 1, 1 is 2, 2 is 5.
double bound(int step) {
  constexpr double kDigits[] = {1, 2, 5};
  const int decade = static_cast<int>(std::floor(step / 3.0));
  return kDigits[step - 3 * decade] * std::pow(10.0, decade);
}

std::string percent(double share) {
  return fmt::format("{:g}", std::round(share * 1e8) / 1e6);
}

}  // namespace

Colour ramp_colour(double place) {
  const double t = std::clamp(place, 0.0, 1.0);
  const double lightness = std::lerp(kLittle.lightness, kMuch.lightness, t);
  const double a = std::lerp(kLittle.green_red, kMuch.green_red, t);
  const double b = std::lerp(kLittle.blue_yellow, kMuch.blue_yellow, t);
  const double l = cubed(lightness + 0.3963377774 * a + 0.2158037573 * b);
  const double m = cubed(lightness - 0.1055613458 * a - 0.0638541728 * b);
  const double s = cubed(lightness - 0.0894841775 * a - 1.2914855480 * b);
  return {srgb(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
          srgb(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
          srgb(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s)};
}

std::vector<RampClass> ramp_classes(double largest) {
  int step = 0;  // 1, as a share
  while (bound(step) > largest && step > -60) --step;
  std::vector<RampClass> classes;
  for (int i = 0; i < kClasses; ++i, --step) {
    const bool last = i + 1 == kClasses;
    RampClass one;
    one.least = last ? 0 : bound(step);
    one.colour = ramp_colour(1 - static_cast<double>(i) / (kClasses - 1));
    if (i == 0) {
      one.label = fmt::format("{} % or more", percent(one.least));
    } else if (last) {
      one.label = fmt::format("under {} %", percent(classes.back().least));
    } else {
      one.label = fmt::format("{} to {} %", percent(one.least), percent(classes.back().least));
    }
    classes.push_back(std::move(one));
  }
  return classes;
}

std::size_t class_of(double value, std::span<const RampClass> classes) {
  const auto found = std::find_if(classes.begin(), classes.end(),
                                  [&](const RampClass& one) { return value >= one.least; });
  return static_cast<std::size_t>(found - classes.begin());
}

}  // namespace sweepwright::formats
