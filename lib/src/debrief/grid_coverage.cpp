#include "sweepwright/debrief/grid_coverage.hpp"

#include <fmt/format.h>

#include "sweepwright/base/error.hpp"
#include "sweepwright/grid/clip.hpp"

namespace sweepwright::debrief {

std::vector<GridCellCoverage> grid_coverage(const CoverageMap& map, const Region& area,
                                            const grid::Grid& grid, const grid::Level& level,
                                            sweep::DetectionLaw law) {
  std::vector<GridCellCoverage> all;
  grid::visit_clipped(grid, area, level, [&](const grid::ClippedCell& part) {
    const auto figures = coverage_figures(map, cells_of(map.frame, part.ground), law);
    if (!figures) return;
    if (all.size() == kMostGridCells) {
      throw Error(ErrorCode::value,
                  fmt::format("the area has more than {} cells of {} {}", kMostGridCells,
                              grid.system(), level.name),
                  "take a coarser level");
    }
    all.push_back({part.cell, *figures});
  });
  return all;
}

}  // namespace sweepwright::debrief
