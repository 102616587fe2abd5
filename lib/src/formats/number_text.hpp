// Numbers as the open formats write them, whatever the locale; private to the formats room.
#pragma once

#include <string>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::formats {

/// Coordinates have 7 decimals: 1 cm on the ground.
inline constexpr double kUnitsPerDegree = 1e7;

/// Degrees, rounded to 7 decimals (half away from zero), without trailing zeros. Room for at least
/// 24 characters at `out`; returns the end.
char* write_degrees(char* out, Angle angle);

void append_degrees(std::string& out, Angle angle);

/// The shortest digits that read back as the same number. Throws Error(value) for NaN and
/// infinities.
void append_number(std::string& out, double value);

}  // namespace sweepwright::formats
