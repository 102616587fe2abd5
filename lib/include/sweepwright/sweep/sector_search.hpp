// What a sector search finds: legs that cross at the datum, close together there and far apart at
// the rim.
//
// Problem: coverage needs a track spacing, and a sector search has none: it grows from nothing at
//   the datum to its most at the rim. The manual takes the spacing half way along the legs; the
//   integral over the disc says what that rule is worth.
// Conventions: n straight lines through the datum, evenly turned, each as long as the diameter: the
//   six-sector form has 3, the four-sector form 2; a second pass turned half a sector doubles them.
//   The object lies anywhere in the disc with equal chance. Legs along the rim are not counted.
// Method: at the distance r the lines stand pi r / n apart along the circle, so the coverage there
//   is C(r) = n W / (pi r), and the probability is the mean over the disc of the law's at C(r).
//   With z = n W / (pi R) and u = sqrt(pi)/2 z that is
//     inverse cube    erf(u) + 2u/sqrt(pi) exp(-u^2) - 2 u^2 erfc(u)
//     exponential     1 - (1 - z) exp(-z) - z^2 E1(z)
//     definite range  2z - z^2, and 1 from z = 1 up
//   For the inverse cube law this is exact for endless lines: the sum over k of 1 / sin^2(t + k pi
//   / n) is n^2 / sin^2(n t), and the mean over t of exp(-a / sin^2 t) is erfc(sqrt a).
// Domain: radius and sweep width above 0, 1 to kMostSectorLines lines.
// Accuracy: 1e-12 for the probability, against scipy's quadrature (sector_search_test.cpp).
// Promises: P1 the probability rises with W and with n and falls with R; P2 the laws keep the order
//   of detection.hpp.
// Source: US National SAR Manual Volume I (Joint Pub 3-50), 1991, paragraph 552.F: mean by the
// track
//   spacing half way along the legs, cross leg equal to the greatest track spacing [seen]; own work
//   for the integrals, with J. W. Craig's form of the error function (IEEE MILCOM, 1991) [from
//   memory].
#pragma once

#include <string_view>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/sweep/detection.hpp"

namespace sweepwright::sweep {

inline constexpr int kMostSectorLines = 36;

struct SectorSearch {
  Length radius;
  int lines = 3;  ///< through the datum
};

/// The number of lines through the datum from that of the sectors, which is even: 3 from `6`.
/// Throws Error (value).
int parse_sectors(std::string_view text);

/// The straight distance between the ends of neighbouring legs: 2 R sin(pi / 2n), which is R for
/// six sectors.
Length greatest_track_spacing(const SectorSearch& search);
/// The same half way along the legs: half of it.
Length mid_leg_track_spacing(const SectorSearch& search);

/// By the manual's rule: the law at the coverage W over the mid-leg track spacing.
Probability mid_leg_probability(DetectionLaw law, Length sweep_width, const SectorSearch& search);

/// The mean over the disc.
Probability sector_search_probability(DetectionLaw law, Length sweep_width,
                                      const SectorSearch& search);

}  // namespace sweepwright::sweep
