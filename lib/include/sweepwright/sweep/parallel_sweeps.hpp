// What parallel sweeps find under a lateral range curve, at a track spacing.
//
// Problem: legs one spacing apart overlap: an object between two legs may be seen from either. The
//   chance is the average, over where it can lie between the legs, of 1 - (1 - p1)(1 - p2)..., one
//   factor for each leg that passes within the curve's reach.
// Conventions: endless, evenly spaced legs, travelled back and forth: each in the opposite
// direction
//   of the one before. A crew that sees to one side only therefore looks into every other gap twice
//   and into the next one not at all.
// Domain: spacing above 0 and at least kLeastSpacingOfReach of the curve's reach from its left to
//   its right end: below that a hundred legs overlap. Passes are independent (detection.hpp).
// Accuracy: 1e-9 for the probability, against scipy's quadrature (parallel_sweeps_test.cpp).
// Promises:
//   P1 where no two legs overlap, the probability is the coverage W / S.
//   P2 it never is above W / S.
//   P3 widest_spacing() gives a spacing that finds the wanted probability, to 1e-9.
// Source: B. O. Koopman, Search and Screening, OEG Report 56 (1946), reissued 1980, chapter 2
//   [from memory]; own work for the legs' directions.
#pragma once

#include "sweepwright/sweep/lateral_range.hpp"

namespace sweepwright::sweep {

inline constexpr double kLeastSpacingOfReach = 0.01;

/// Throws Error (value) for a spacing outside the domain.
Probability parallel_sweeps_probability(const LateralRangeCurve& curve, Length spacing);

/// The widest spacing that finds the wanted probability, on a scan of half percent steps from W /
/// `wanted` down. Throws Error (value) for a probability of 0, Error (impossible) when no spacing
/// from a coverage of 10 down finds it.
Length widest_spacing(const LateralRangeCurve& curve, Probability wanted);

}  // namespace sweepwright::sweep
