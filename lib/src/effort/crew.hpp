// A crew as the search for a layout sees it: what it finds in a box, and which boxes it can fly;
// private to the effort room.
#pragma once

#include <span>
#include <vector>

#include "effort/box.hpp"
#include "effort/plane_belief.hpp"

namespace sweepwright::effort {

/// Metres, square metres.
struct Crew {
  std::size_t place = 0;     ///< among the searchers as given
  double effort = 0;         ///< Z = W V T
  double flown = 0;          ///< V T, the length of all its legs
  double most_coverage = 0;  ///< by its least spacing; infinite without one
  double least_long = 0;     ///< of the box's longer side
  double least_short = 0;    ///< of its shorter side
};

/// The crews of the searchers, the strongest first; equal ones in the order given. Throws as
/// search_effort() and for negative limits.
std::vector<Crew> make_crews(std::span<const Searcher> searchers);

/// Legs and width are long enough, and there is time for one whole leg at least.
inline bool can_fly(const Crew& crew, const Box& box) {
  return box.long_side() >= crew.least_long && box.short_side() >= crew.least_short &&
         box.long_side() <= crew.flown;
}

double coverage(const Crew& crew, double area);

/// The probability that the crew finds the object in the box, by the raster.
double worth(const PlaneBelief& belief, const Crew& crew, const Box& box);

/// One box for each crew, in the crews' order.
using Layout = std::vector<Box>;

double worth(const PlaneBelief& belief, std::span<const Crew> crews, const Layout& layout);

}  // namespace sweepwright::effort
