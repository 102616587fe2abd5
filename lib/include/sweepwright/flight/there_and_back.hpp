// There and back: distance, bearings, time and fuel between two places, both ways, in the wind.
//
// Conventions: a bearing is that at the start of each way: the two are not quite opposite, since
//   meridians meet. The way back begins when the way out ends.
// Domain: any two places. Error(impossible) names the way that the wind does not allow.
// Accuracy: distance and bearings as geodesic.hpp, times as flown_pattern.hpp
//   (there_and_back_test.cpp).
// Promises: P1 in steady wind the way from B to A and back is the same two ways in the other
//   order.
// Source: the headers named.
#pragma once

#include <optional>

#include "sweepwright/flight/wind_field.hpp"
#include "sweepwright/flight/wind_triangle.hpp"
#include "sweepwright/magnetic/variation.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::flight {

/// How a way is flown.
struct WayFlown {
  WindTriangle triangle;  ///< at its start
  Duration time{};
};

struct Way {
  Position from;
  Position to;
  GeodesicLine line;
  magnetic::Variation variation;  ///< at its start
  std::optional<WayFlown> flown;
  MagneticDirection magnetic_bearing() const {
    return magnetic::to_magnetic(line.start_track, variation);
  }
};

struct ThereAndBack {
  Way out;
  Way back;
};

struct WayConditions {
  TimePoint depart{};                    ///< for the wind and the variation
  Length height = {};                    ///< above sea level
  std::optional<Speed> true_airspeed{};  ///< none: bearings and distance only
  WindField wind{};
};

ThereAndBack there_and_back(Position a, Position b, const WayConditions& conditions);

}  // namespace sweepwright::flight
