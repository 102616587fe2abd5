// Whole numbers for latitudes and longitudes, so that edges are exact.
//
// A tick is a billionth of an arc second (31 nanometres on the ground): positions are rounded to
// ticks, and nothing after that rounds. A step is 15 arc seconds, the largest size that divides
// every cell of every grid of parallels and meridians here (3.75', 5', 1').
// Both count from the south pole northward and from 180 W eastward.
#pragma once

#include <cstdint>

#include "sweepwright/grid/lat_lon_box.hpp"

namespace sweepwright::grid {

using Ticks = std::int64_t;

inline constexpr int kStepsPerDegree = 240;
inline constexpr Ticks kTicksPerDegree = 3'600'000'000'000;
inline constexpr Ticks kTicksPerStep = kTicksPerDegree / kStepsPerDegree;
inline constexpr int kStepsAround = 360 * kStepsPerDegree;  ///< all longitudes
inline constexpr int kStepsUp = 180 * kStepsPerDegree;      ///< all latitudes

/// The square of 15 by 15 arc seconds whose south-west corner has these counts.
struct StepSquare {
  int north;
  int east;
};

/// The angle plus `offset_degrees` in ticks; the sum must not be negative.
inline Ticks to_ticks(double degrees, int offset_degrees) {
  constexpr double kScale = kTicksPerDegree;
  // NOLINTNEXTLINE(bugprone-incorrect-roundings): the sum is never negative
  return static_cast<Ticks>(degrees * kScale + offset_degrees * kScale + 0.5);
}
inline Ticks north_ticks(Angle latitude) {
  return to_ticks(latitude.degrees(), 90);
}
inline Ticks east_ticks(Angle longitude) {
  return to_ticks(longitude.degrees(), 180);
}

/// to_ticks() in whole steps, rounded down. Half a tick is 3.3e-11 steps, and the arithmetic is
/// right to 2e-11 steps, so an edge is never missed.
inline int to_steps(double degrees, int offset_degrees) {
  constexpr double kHalfTick = 0.5 / kTicksPerStep;
  return static_cast<int>(degrees * kStepsPerDegree +
                          (offset_degrees * kStepsPerDegree + kHalfTick));
}

/// The square that holds the position when squares own their south and west edges.
inline StepSquare west_owning_square(Position position) {
  const int north = to_steps(position.latitude().degrees(), 90);
  const int east = to_steps(position.longitude().degrees(), 180);
  return {north < kStepsUp ? north : kStepsUp - 1, east < kStepsAround ? east : 0};
}

/// The square that holds the position when squares own their south and east edges: the mirror
/// image of the other rule.
inline StepSquare east_owning_square(Position position) {
  const int north = to_steps(position.latitude().degrees(), 90);
  const int west = to_steps(-position.longitude().degrees(), 180);
  return {north < kStepsUp ? north : kStepsUp - 1,
          west < kStepsAround ? kStepsAround - 1 - west : kStepsAround - 1};
}

/// The box of `size` by `size` steps whose south-west corner is that of `corner`. Each limit is
/// the double nearest to the true value.
inline LatLonBox box_of(StepSquare corner, int size) {
  const auto degrees = [](int steps) {
    return Angle::degrees(static_cast<double>(steps) / kStepsPerDegree);
  };
  return {.south = degrees(corner.north - kStepsUp / 2),
          .north = degrees(corner.north + size - kStepsUp / 2),
          .west = degrees(corner.east - kStepsAround / 2),
          .east = degrees(corner.east + size - kStepsAround / 2)};
}

/// Quotient rounded down; `b` is positive.
constexpr Ticks floor_div(Ticks a, Ticks b) {
  return a / b - (a % b < 0 ? 1 : 0);
}
/// Quotient rounded up; `b` is positive.
constexpr Ticks ceil_div(Ticks a, Ticks b) {
  return a / b + (a % b > 0 ? 1 : 0);
}

}  // namespace sweepwright::grid
