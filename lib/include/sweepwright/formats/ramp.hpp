// A ramp of colours from little to much, for shaded maps.
//
// Problem: a shaded map must be read by eyes that tell no red from green, and on a black-and-white
//   print.
// Conventions: 0 is pale yellow, 1 dark blue. The ramp is straight in the OKLab colour space, so
// that
//   equal steps look equally large, and darkness alone carries all of it.
// Accuracy: CIE lightness falls from 95 to 15 in steps that are even within a fifth
//   (ramp_test.cpp).
// Source: B. Ottosson, A perceptual color space for image processing (2020) [from memory]; IEC
//   61966-2-1 (sRGB) [from memory].
#pragma once

#include <span>
#include <string>
#include <vector>

#include "sweepwright/formats/colour.hpp"

namespace sweepwright::formats {

/// The colour at a place from 0 to 1; what lies beyond counts as the end.
Colour ramp_colour(double place);

/// One step of a shaded map: values of `least` or more, and below the next darker step's.
struct RampClass {
  double least = 0;
  std::string label;  ///< `5 to 10 %`
  Colour colour;
};

/// Steps for shares from 0 to `largest`, the darkest first; the last begins at 0. Bounds are 1, 2
/// or 5 times a power of ten.
std::vector<RampClass> ramp_classes(double largest);

/// The step of a value: its place in the list.
std::size_t class_of(double value, std::span<const RampClass> classes);

}  // namespace sweepwright::formats
