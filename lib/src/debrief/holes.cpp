#include "sweepwright/debrief/holes.hpp"

#include <algorithm>

#include "debrief/cell_outline.hpp"

namespace sweepwright::debrief {
namespace {

/// The cells joined to `first` over shared sides, rising; `open` marks those not yet taken.
std::vector<std::size_t> take_joined(std::size_t first, const CoverageFrame& frame,
                                     std::vector<bool>& open) {
  std::vector<std::size_t> joined{first};
  open[first] = false;
  const auto take = [&](bool there, std::size_t cell) {
    if (!there || !open[cell]) return;
    open[cell] = false;
    joined.push_back(cell);
  };
  for (std::size_t i = 0; i < joined.size(); ++i) {
    const std::size_t cell = joined[i];
    const std::size_t column = cell % frame.columns;
    const std::size_t row = cell / frame.columns;
    take(column > 0, cell - 1);
    take(column + 1 < frame.columns, cell + 1);
    take(row > 0, cell - frame.columns);
    take(row + 1 < frame.rows, cell + frame.columns);
  }
  std::sort(joined.begin(), joined.end());
  return joined;
}

}  // namespace

std::vector<Hole> holes(const CoverageMap& map, std::span<const std::size_t> cells,
                        const HoleRule& rule) {
  std::vector<bool> open(map.frame.cells());
  for (const std::size_t cell : cells) {
    open[cell] = pod(map, cell, rule.law) < rule.wanted.value();
  }
  std::vector<Hole> found;
  for (const std::size_t first : cells) {
    if (!open[first]) continue;
    const std::vector<std::size_t> joined = take_joined(first, map.frame, open);
    const auto count = static_cast<double>(joined.size());
    if (map.frame.cell_area() * count < rule.least) continue;
    Hole hole;
    hole.cells = joined.size();
    hole.least_pod = 1;
    for (const std::size_t cell : joined) {
      hole.mean_pod += pod(map, cell, rule.law) / count;
      hole.least_pod = std::min(hole.least_pod, pod(map, cell, rule.law));
    }
    hole.region.polygons.push_back(outline_of_cells(map.frame, joined));
    hole.area = area(hole.region);
    found.push_back(std::move(hole));
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Hole& a, const Hole& b) { return a.cells > b.cells; });
  return found;
}

}  // namespace sweepwright::debrief
