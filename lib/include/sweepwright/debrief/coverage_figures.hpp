// Figures of some ground out of a coverage map: a sector, a grid cell, the whole area.
//
// Conventions: the ground is that of the raster's cells whose middle lies in it; each counts alike.
//   Effort is track length in the ground x sweep width, coverage = effort / area of those cells.
// Accuracy: as the map's; the edge of the ground is met to half a cell: an area 20 cells across is
//   known within 1 % of itself.
// Promises: P1 mean POD lies between the least and the most; P2 under the exponential law it is
//   1 - exp(-C) of the ground as a whole (coverage_figures_test.cpp).
// Source: as coverage_map.hpp.
#pragma once

#include <optional>
#include <span>

#include "sweepwright/debrief/coverage_map.hpp"

namespace sweepwright::debrief {

struct CoverageFigures {
  std::size_t cells = 0;  ///< of the raster
  Area area;              ///< of those cells
  double pod = 0;         ///< mean over the cells; exponential law: of the ground as a whole
  double least_pod = 0;   ///< of a cell
  double most_pod = 0;
  double swept_share = 0;
  double passes = 0;              ///< mean
  std::optional<Length> nearest;  ///< least; none where no track came within its sweep width
  Area effort;
  double coverage = 0;
};

/// None when `cells` is empty.
std::optional<CoverageFigures> coverage_figures(const CoverageMap& map,
                                                std::span<const std::size_t> cells,
                                                sweep::DetectionLaw law);

/// The cells of a region: those of cells_inside(), or the one that holds its middle when the region
/// is smaller than a cell. Empty when it lies off the raster.
std::vector<std::size_t> cells_of(const CoverageFrame& frame, const Region& region);

}  // namespace sweepwright::debrief
