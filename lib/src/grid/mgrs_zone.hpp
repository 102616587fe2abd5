// The maps of MGRS: one piece of ground for each zone and band, and the two polar areas.
#pragma once

#include <vector>

#include "grid/flat.hpp"

namespace sweepwright::grid {

struct MgrsZone {
  int number;         ///< 1 to 60; 0 for the polar areas
  char band;          ///< C to X; Z for the north polar area, A for the south
  FlatBounds limits;  ///< in degrees
  bool north() const { return band >= 'N'; }
  bool polar() const { return number == 0; }
};

/// All of them, from the north-west to the south-east.
const std::vector<MgrsZone>& mgrs_zones();

/// The zone with this number and band (Y for Z and B for A will do); null when there is none.
const MgrsZone* find_zone(int number, char band);

/// From degrees to metres on the zone's map. The place may lie on the zone's edge, not beyond.
FlatPoint to_map(const MgrsZone& zone, FlatPoint degrees);
/// And back. Longitudes run on past 180, so that they stay near `near_longitude`.
FlatPoint from_map(const MgrsZone& zone, FlatPoint metres, double near_longitude);

/// Polygons in degrees, within the zone's limits, laid on its map: corners are added until edges
/// that are straight in longitude and latitude are straight there within 0.1 m.
FlatRegion to_map(const MgrsZone& zone, const FlatRegion& region);

/// A square of the map, in degrees, with corners added until its edges are within 0.1 m, cut at the
/// zone's limits.
FlatRegion square_on_ground(const MgrsZone& zone, FlatPoint south_west, double side_metres);

}  // namespace sweepwright::grid
