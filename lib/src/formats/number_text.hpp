// Numbers as the open formats write them, whatever the locale; private to the formats room.
#pragma once

#include <cstddef>
#include <string>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::formats {

/// Coordinates have 7 decimals: 1 cm on the ground.
inline constexpr double kUnitsPerDegree = 1e7;

/// Degrees, rounded to 7 decimals (half away from zero), without trailing zeros. Needs room for
/// kDegreesRoom characters at `out`; returns the end.
inline constexpr std::size_t kDegreesRoom = 16;
char* write_degrees(char* out, Angle angle);

void append_degrees(std::string& out, Angle angle);

/// The shortest digits that read back as the same number. Throws Error(value) for NaN and
/// infinities.
void append_number(std::string& out, double value);

}  // namespace sweepwright::formats
