// Holes: ground that the search left under the probability of detection that the planner wants.
//
// Problem: a mean POD hides the corner that nobody flew over. The planner wants to see it as an
//   area, with its size, the largest first, to send somebody there.
// Conventions: cells under the wanted POD that share a side are one hole. Its outline runs along
//   the sides of its cells: nothing is smoothed away, only corners that lie on a straight line are
//   left out. Ground inside a hole that has the POD is a hole of the polygon, and may touch the
//   outline at a corner.
// Domain: that of the map.
// Accuracy: a cell's; areas are those of the outlines on the ellipsoid (holes_test.cpp).
// Promises: P1 the holes' areas add up to that of all cells under the wanted POD when the least
//   size is 0; P2 they come in falling size, those of the same size in the order of their first
//   cell.
// Source: own work.
#pragma once

#include <span>
#include <vector>

#include "sweepwright/debrief/coverage_map.hpp"

namespace sweepwright::debrief {

struct Hole {
  Region region;
  Area area;
  double mean_pod = 0;
  double least_pod = 0;
  std::size_t cells = 0;
};

struct HoleRule {
  sweep::DetectionLaw law = sweep::DetectionLaw::inverse_cube;
  sweep::Probability wanted;  ///< cells under it are holes
  Area least;                 ///< smaller holes are left out
};

/// `cells`: where to look, such as cells_inside() of a sector.
std::vector<Hole> holes(const CoverageMap& map, std::span<const std::size_t> cells,
                        const HoleRule& rule);

}  // namespace sweepwright::debrief
