// A datum line: the object lies near a route, as likely along each mile of a leg as along any
// other.
//
// Conventions: across the track a normal whose half lies within `spread` of the track, on both
// sides
//   together: deviation = spread / 0.67449. It is the datum of that deviation moved along the
//   route: so its ends are rounded, and bends neither gap nor bulge. Legs are shortest lines.
//   Without `leg_weights` each leg weighs as much as it is long.
// Domain: routes of 2 to 1000 places, anywhere; each leg under half the way round the Earth.
// Accuracy: legs are worked in pieces of up to 200 km, each flat by bearing and distance from its
//   middle: cell probabilities to 1e-4 of their size for spreads up to 20 NM
//   (datum_line_test.cpp); away from bends and ends a band of half-width d holds
//   erf(d / (s sqrt 2)).
// Source: normal distribution; datum lines: IAMSAR Manual Volume II, chapter 4 [from memory].
#pragma once

#include <vector>

#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::belief {

struct DatumLine {
  Path route;
  Length spread;                    ///< half of all lies within it of the track
  std::vector<double> leg_weights;  ///< relative, one for each leg; empty: the legs' lengths
};

/// The deviation across the track of a line with that spread.
Length cross_track_deviation(Length spread);

}  // namespace sweepwright::belief
