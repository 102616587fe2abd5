// Bands along a route with stated probabilities: such as 75 percent within 5 miles of the course.
//
// Conventions: each band reaches from the one before it (the first from the track) to `within`, on
//   both sides, with equal chances everywhere in it; along the route each mile weighs the same.
//   Bands end square at the ends of each leg, and overlap on the inside of bends. What the bands
//   leave of 1 is outside.
// Domain: 1 to 20 bands, `within` rising, up to 500 km.
// Source: statistics of this form: US National SAR Manual Volume I (Joint Pub 3-50, 1991),
//   paragraph 800.B [seen]: about three quarters within 5 miles of the proposed course.
#pragma once

#include <vector>

#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::belief {

struct Band {
  Length within;           ///< of the track
  double probability = 0;  ///< of this band alone, not counting the inner ones
};

struct RouteBands {
  Path route;
  std::vector<Band> bands;
};

}  // namespace sweepwright::belief
