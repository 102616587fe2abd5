#include "sweepwright/hazard/minima.hpp"

#include <algorithm>

namespace sweepwright::hazard {

Length corridor_half_width(const Minima& minima, Length track_spacing) {
  return minima.corridor.value_or(std::max(track_spacing / 2, terrain::kCorridorHalfWidth));
}

}  // namespace sweepwright::hazard
