// The axes of a profile chart: where distances and heights stand on paper; private to the formats
// room.
#pragma once

#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/formats/drawing.hpp"

namespace sweepwright::formats {

class ProfileAxes {
 public:
  /// Heights from `lowest` to `highest`, widened to whole ticks.
  ProfileAxes(const PaperBox& frame, Length length, Length lowest, Length highest);

  const PaperBox& frame() const { return frame_; }
  double x_mm(Length distance) const;
  double y_mm(Length height) const;

  /// Frame, grid lines and figures.
  void draw(std::vector<Element>& elements) const;

 private:
  PaperBox frame_;
  Length length_;
  Length bottom_;
  Length top_;
  Length height_tick_;
  Length distance_tick_;
};

/// 1, 2 or 5 times a power of ten: the smallest that cuts `range` into at most `most` pieces.
double nice_step(double range, int most);

}  // namespace sweepwright::formats
