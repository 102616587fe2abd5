// A belief laid out on a plane: how much of it lies in a box, quickly or exactly; private to the
// effort room.
#pragma once

#include <array>
#include <span>
#include <vector>

#include "effort/box.hpp"
#include "sweepwright/effort/assign.hpp"
#include "sweepwright/position/local_plane.hpp"

namespace sweepwright::effort {

/// Where the belief has its weight.
struct Weight {
  Position centre;
  TrueDirection long_axis;  ///< whole degrees, 0 to 180
};

Weight weight_of(std::span<const ProbableGround> belief);

class PlaneBelief {
 public:
  PlaneBelief(std::span<const ProbableGround> belief, const LocalPlane& plane);

  /// Round all ground with any probability, but for the last thousandth at each side.
  const Box& bounds() const { return bounds_; }

  /// The probability in the box, from a raster of kPixels x kPixels: for comparing boxes.
  double quick_mass(const Box& box) const;
  /// The same from the share of each cell in the box.
  double mass(const Box& box) const;

 private:
  struct Point {
    double right;
    double up;
  };
  struct PlaneCell {
    std::vector<std::vector<Point>> rings;  ///< outer ones counterclockwise, holes clockwise
    Box bounds;
    double area;  ///< on the plane
    double probability;
  };
  static PlaneCell plane_cell(const ProbableGround& ground, const LocalPlane& plane);
  static double area_within(const std::vector<Point>& ring, const Box& box);
  static bool holds(const PlaneCell& cell, Point point);

  void fill_raster();
  void trim_bounds();
  double below(double right, double up) const;

  static constexpr int kPixels = 400;
  std::vector<PlaneCell> cells_;
  Box raster_bounds_;
  Box bounds_;
  /// sums_[row * (kPixels + 1) + column]: the probability left of and below that corner of a pixel.
  std::vector<double> sums_;
};

}  // namespace sweepwright::effort
