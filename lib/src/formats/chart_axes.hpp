// Axes of a chart on paper: scale, ticks, grid lines and titles; private to the formats room.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

/// One axis: values from `least` to `most`, a tick at each whole multiple of `step`.
struct Axis {
  std::string title;  ///< with the unit
  double least = 0;
  double most = 1;
  double step = 0.2;
  int decimals = 1;  ///< of the ticks' numbers
};

class Axes {
 public:
  Axes(PaperBox box, Axis x, Axis y) : box_(box), x_(std::move(x)), y_(std::move(y)) {}

  const PaperBox& box() const { return box_; }
  /// Where a value stands on paper.
  PaperPoint at(double x, double y) const;
  /// Grid lines, numbers, titles and the frame.
  std::vector<Element> elements() const;

 private:
  PaperBox box_;
  Axis x_;
  Axis y_;
};

/// A step of 1, 2 or 5 times a power of ten that gives four to nine ticks over `span`.
double tick_step(double span);

}  // namespace sweepwright::formats
