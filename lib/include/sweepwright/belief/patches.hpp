// Ground with equal chances: a search area, regions that planners have weighed, a raster.
//
// Conventions: each patch has a share of the whole, spread evenly over its ground. Patches may
//   overlap: their shares add. What the shares leave of 1 is outside.
// Accuracy: as the areas of clip.hpp: 1e-9 for grids of parallels and meridians, 1e-5 for others.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "sweepwright/grid/cell.hpp"

namespace sweepwright::belief {

struct Patch {
  std::variant<Region, grid::LatLonBox> ground;
  double share = 0;
};

struct Patches {
  std::vector<Patch> patches;
};

/// One area, all of the belief in it.
Patches equal_chances(Region area);

/// One planner's estimate: a share for each region; what they leave of 1 lies outside all of them.
struct Vote {
  std::string planner;  ///< may be empty
  std::vector<double> shares;
};

/// The average of the votes, each planner counting the same, with the share outside all regions
/// kept. Throws Error(value) for no votes, a vote of the wrong length, a share that is not from 0
/// to 1, or shares that sum to more than 1. Source: averaging the estimates of several planners:
/// attributed to R. Mattson [from memory].
Patches consensus(const std::vector<Region>& regions, const std::vector<Vote>& votes);

/// Stated probabilities of cells of any grid. Throws Error(value) when they sum to more than 1.
Patches stated(const std::vector<std::pair<grid::Cell, double>>& cells);

}  // namespace sweepwright::belief
