// Areas that are hard to divide, for tests.
#pragma once

#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::test {

using Corners = std::vector<std::pair<double, double>>;  ///< NM right and up of the middle

struct Shape {
  std::string name;
  Corners outer;
  std::vector<Corners> holes;
};

inline Corners arc(double centre_right, double radius, double from_deg, double to_deg, int steps) {
  Corners out;
  for (int i = 0; i < steps; ++i) {
    const double angle = (from_deg + (to_deg - from_deg) * i / steps) * std::numbers::pi / 180;
    out.emplace_back(centre_right + radius * std::cos(angle), radius * std::sin(angle));
  }
  return out;
}

inline Corners crescent() {
  Corners out = arc(0, 25, 60, 300, 30);
  const Corners inner = arc(8, 17.5, 295, 65, 30);
  out.insert(out.end(), inner.begin(), inner.end());
  return out;
}

inline std::vector<Shape> ugly_shapes() {
  return {
      {"corner", {{0, 0}, {40, 0}, {40, 12}, {12, 12}, {12, 40}, {0, 40}}, {}},
      {"bay", {{0, 0}, {40, 0}, {40, 40}, {30, 40}, {30, 10}, {10, 10}, {10, 40}, {0, 40}}, {}},
      {"star",
       {{0, 25},
        {6, 8},
        {24, 8},
        {9.5, -3},
        {15, -20},
        {0, -10},
        {-15, -20},
        {-9.5, -3},
        {-24, 8},
        {-6, 8}},
       {}},
      {"crescent", crescent(), {}},
      {"lake with island", arc(0, 25, 0, 360, 40), {arc(3, 9, 0, 360, 24)}},
      {"narrow valley", {{0, 0}, {30, 22}, {44, 40}, {41, 42}, {27, 25}, {-2, 3}}, {}},
      {"stairs with hole",
       {{0, 0}, {45, 0}, {45, 16}, {26, 16}, {26, 34}, {0, 34}},
       {{{8, 8}, {16, 8}, {16, 16}, {8, 16}}}},
      {"zigzag",
       {{0, 0},
        {20, 0},
        {20, 20},
        {40, 20},
        {40, 40},
        {28, 40},
        {28, 30},
        {10, 30},
        {10, 10},
        {0, 10}},
       {}},
  };
}

/// The shape laid on the ground, `up` in direction `axis` at the place.
inline Region on_ground(const Shape& shape, Position place, TrueDirection axis = {}) {
  const LocalPlane plane(place, axis);
  const auto ring = [&](const Corners& corners) {
    Ring out;
    for (const auto& [right, up] : corners) {
      out.push_back(plane.to_position({Length::nautical_miles(right), Length::nautical_miles(up)}));
    }
    return out;
  };
  Polygon polygon{ring(shape.outer), {}};
  for (const Corners& hole : shape.holes) polygon.holes.push_back(ring(hole));
  return make_region({polygon});
}

}  // namespace sweepwright::test
