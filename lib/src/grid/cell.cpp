#include "sweepwright/grid/cell.hpp"

#include <algorithm>

namespace sweepwright::grid {

Region outline(const Cell& cell) {
  return cell.box ? outline(*cell.box) : cell.region;
}

Area area(const Cell& cell) {
  return cell.box ? area(*cell.box) : sweepwright::area(cell.region);
}

Position label_point(const Cell& cell) {
  if (cell.box) return centre(*cell.box);
  const auto& parts = cell.region.polygons;
  if (parts.size() == 1) return middle(cell.region);
  // The middle of several parts may lie between them.
  const auto largest =
      std::max_element(parts.begin(), parts.end(), [](const auto& a, const auto& b) {
        return sweepwright::area({{a}}) < sweepwright::area({{b}});
      });
  return middle(Region{{*largest}});
}

}  // namespace sweepwright::grid
