// Turns a ring as drawn in longitude and latitude into a ring of a Region; private to the formats
// room.
#pragma once

#include "formats/area_collector.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::formats {

/// What had to be mended or understood on the way.
struct RingRemarks {
  std::size_t open_rings = 0;
  std::size_t longitudes_past_180 = 0;
  std::size_t edges_over_half_way = 0;  ///< read as the shorter way round
};

bool is_closed(const DrawnRing& ring);

/// The ring with shortest lines for edges. Error(geometry) when it has no three corners.
Ring to_ring(const DrawnRing& drawn, RingRemarks& remarks);

}  // namespace sweepwright::formats
