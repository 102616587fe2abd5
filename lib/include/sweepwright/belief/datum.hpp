// A datum: the most probable position of the object, with its total probable error.
//
// Conventions: the total probable error E is the radius of the circle that holds half of all: a
//   circular normal of deviation s = E / sqrt(2 ln 2) = E / 1.17741. It is laid out on the ground
//   by true bearing and distance from the datum, so a circle of radius R round the datum holds
//   1 - exp(-R^2 / (2 s^2)) wherever it lies.
// Domain: anywhere, poles and antimeridian included; E from 1 m to kLargestError.
// Accuracy: cell probabilities to 1e-9 (normal_test.cpp, against scipy and the closed form).
// Source: E = sqrt(D^2 + X^2 + Y^2): IAMSAR Manual Volume II, Appendix K [from memory]; half of all
//   within E and the circular normal: the same, Appendix M [from memory].
#pragma once

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::belief {

inline constexpr Length kLeastError = Length::metres(1);
inline constexpr Length kLargestError = Length::kilometres(300);

/// What makes the position uncertain; each a radius that holds half.
struct ProbableErrors {
  Length drift;             ///< D, of the drift since the incident
  Length initial_position;  ///< X, of the position of the incident
  Length search_craft;      ///< Y, of the search craft's own navigation
};

/// E = sqrt(D^2 + X^2 + Y^2). Throws Error(value) for a negative part.
Length total_probable_error(const ProbableErrors& parts);

struct Datum {
  Position position;
  Length error;  ///< total probable error E
};

/// The deviation s of a circular normal whose half lies within `error`: E / 1.17741.
Length deviation(Length error);

}  // namespace sweepwright::belief
