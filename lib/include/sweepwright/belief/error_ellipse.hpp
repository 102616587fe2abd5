// An error ellipse: a datum that is known better in one direction than in the other.
//
// Conventions: the semi axes are those of the ellipse that holds half of all; an ellipse k times as
//   large holds 1 - 2^(-k^2). Laid out on the ground by true bearing and distance from its centre.
// Domain: as a datum's; the axes may be given in either order of size, and be up to 1000 to 1.
// Accuracy: cell probabilities to 1e-9 (normal_test.cpp, against scipy).
// Source: bivariate normal distribution; half within the ellipse: as the datum's circle.
#pragma once

#include "sweepwright/base/direction.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::belief {

struct ErrorEllipse {
  Position centre;
  Length semi_major;  ///< holds half together with semi_minor
  Length semi_minor;
  TrueDirection major_axis;  ///< of the axis `semi_major`, either way along it
};

}  // namespace sweepwright::belief
