// An area's ground on a lattice of nodes: heights, slopes, summits and hollows; private to the
// pattern room.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/position/plane_region.hpp"
#include "sweepwright/terrain/elevation_model.hpp"

namespace sweepwright::pattern {

/// The ground that is searched, and its model.
struct SearchedGround {
  const Region& region;
  const LocalPlane& plane;
  const PlaneRegion& flat;  ///< the region on that plane
  const terrain::ElevationModel& model;
};

struct GroundNode {
  PlanePoint place;
  bool inside = false;           ///< in the region
  std::optional<Length> height;  ///< none in a gap, and outside the region
  Angle slope;                   ///< 0 to 90 degrees; of a node with height
};

struct GroundLattice {
  int rows = 0;
  int columns = 0;
  std::vector<GroundNode> nodes;  ///< row by row
  Length step;                    ///< the larger one between neighbours

  std::size_t index(int row, int column) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
           static_cast<std::size_t>(column);
  }
  /// The node nearest to a place.
  std::size_t nearest(PlanePoint place) const;
};

/// Nodes a sixth of `spacing` apart, 40 to 120 along each side of the area. Throws Error(value)
/// that names the place when the model does not know the ground at the area's edge, and when it
/// knows none inside.
GroundLattice make_ground_lattice(const SearchedGround& ground, Length spacing);

enum class Extreme { summit, hollow };

/// The highest (lowest) ground near a node, by steps uphill (downhill) inside the region.
Length extreme_height(const SearchedGround& ground, const GroundLattice& lattice, std::size_t node,
                      Extreme extreme);

/// Ground that stands out beyond one level without reaching the next.
struct StandingOut {
  Length extreme;            ///< its highest or lowest ground
  std::vector<bool> ground;  ///< for each node, whether it belongs to it
};

/// The parts of {ground above `level`} that do not reach `next` (none: no next level); with hollows
/// the parts below `level`.
std::vector<StandingOut> standing_out(const SearchedGround& ground, const GroundLattice& lattice,
                                      Length level, std::optional<Length> next, Extreme extreme);

}  // namespace sweepwright::pattern
