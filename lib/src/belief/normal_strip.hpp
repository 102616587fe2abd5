// NormalStrip: a normal distribution on the ground, smeared along a stretch of shortest line.
//
// Problem: datums, error ellipses and pieces of a datum line are all of this form: a
// two-dimensional
//   normal, moved evenly along a stretch of `half_length` to both sides of `centre` (0: not moved).
//   Its mass in a cell is wanted, whatever the cell's edges are.
// Conventions: the ground is laid flat by bearing and distance from the centre (azimuthal
//   equidistant), `along` on the axis and `right` across it. With A(along) the part of the
//   distribution that lies further back, Green's theorem gives the mass inside an edge that runs
//   counterclockwise: minus the integral of A(along) phi(right) d(right) along it.
// Accuracy: 1e-9: Gauss's rule on pieces of the edge that are short against the deviations.
#pragma once

#include "sweepwright/base/direction.hpp"
#include "sweepwright/grid/cell.hpp"

namespace sweepwright::belief {

struct NormalStrip {
  Position centre;
  TrueDirection axis;
  Length half_length;
  Length along_deviation;
  Length across_deviation;
};

/// The probability in a cell, 0 to 1. Less than 1e-14 counts as 0.
double mass(const NormalStrip& strip, const grid::Cell& cell);

/// The ground within `factor` deviations of the stretch; an ellipse when the stretch has no length.
/// The corners lie on the line, or so far outside it that the polygon holds it all.
enum class RingCorners { on_the_line, outside_it };
Region ring(const NormalStrip& strip, double factor, RingCorners corners);

}  // namespace sweepwright::belief
