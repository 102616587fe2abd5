#include "sweepwright/debrief/coverage_figures.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sweepwright::debrief {

std::optional<CoverageFigures> coverage_figures(const CoverageMap& map,
                                                std::span<const std::size_t> cells,
                                                sweep::DetectionLaw law) {
  if (cells.empty()) return std::nullopt;
  CoverageFigures figures;
  figures.cells = cells.size();
  figures.least_pod = 1;
  double effort_m2 = 0;
  float nearest_m = std::numeric_limits<float>::infinity();
  for (const std::size_t cell : cells) {
    const double one = pod(map, cell, law);
    figures.pod += one;
    figures.least_pod = std::min(figures.least_pod, one);
    figures.most_pod = std::max(figures.most_pod, one);
    figures.swept_share += static_cast<double>(map.swept_share[cell]);
    figures.passes += map.passes[cell];
    nearest_m = std::min(nearest_m, map.nearest_m[cell]);
    effort_m2 += map.effort_m2[cell];
  }
  const auto count = static_cast<double>(cells.size());
  figures.area = map.frame.cell_area() * count;
  figures.swept_share /= count;
  figures.passes /= count;
  if (std::isfinite(nearest_m)) figures.nearest = Length::metres(static_cast<double>(nearest_m));
  figures.effort = Area::square_metres(effort_m2);
  figures.coverage = figures.effort / figures.area;
  figures.pod = law == sweep::DetectionLaw::exponential ? -std::expm1(-figures.coverage)
                                                        : figures.pod / count;
  return figures;
}

std::vector<std::size_t> cells_of(const CoverageFrame& frame, const Region& region) {
  std::vector<std::size_t> cells = cells_inside(frame, region);
  if (!cells.empty()) return cells;
  const PlanePoint at = frame.plane.to_plane(middle(region));
  const double column = std::floor((at.right - frame.corner.right) / frame.cell);
  const double row = std::floor((at.up - frame.corner.up) / frame.cell);
  const bool on_raster = column >= 0 && column < static_cast<double>(frame.columns) && row >= 0 &&
                         row < static_cast<double>(frame.rows);
  if (on_raster) {
    cells.push_back(static_cast<std::size_t>(row) * frame.columns +
                    static_cast<std::size_t>(column));
  }
  return cells;
}

}  // namespace sweepwright::debrief
