// Coverage of the cells of a grid, by their names.
//
// Conventions: those of coverage_figures.hpp. A cell counts as far as it lies in the area.
// Accuracy: coverage_figures.hpp; take cells of the raster well smaller than those of the grid.
// Promises: P1 every cell of the grid that touches the area and the raster is there once, in the
//   grid's order (coverage_figures_test.cpp).
// Source: as coverage_map.hpp.
#pragma once

#include <vector>

#include "sweepwright/debrief/coverage_figures.hpp"
#include "sweepwright/grid/grid.hpp"

namespace sweepwright::debrief {

struct GridCellCoverage {
  grid::Cell cell;
  CoverageFigures figures;
};

/// More cells than a table or map is for.
inline constexpr std::size_t kMostGridCells = 100'000;

/// Throws Error(value) for more than kMostGridCells cells.
std::vector<GridCellCoverage> grid_coverage(const CoverageMap& map, const Region& area,
                                            const grid::Grid& grid, const grid::Level& level,
                                            sweep::DetectionLaw law);

}  // namespace sweepwright::debrief
