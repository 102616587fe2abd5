#include "sweepwright/grid/grid.hpp"

#include <fmt/format.h>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::grid {

const Level& Grid::level(std::string_view name) const {
  std::vector<std::string_view> names;
  for (const Level& known : levels()) {
    if (known.name == name) return known;
    names.push_back(known.name);
  }
  throw Error(ErrorCode::value,
              fmt::format("'{}' is not a level of the grid '{}'", printable(name), system()),
              spelling_hint(name, names));
}

bool Grid::covers(Position) const {
  return true;
}

std::vector<Cell> Grid::cells_touching(const Region& area, const Level& level) const {
  std::vector<Cell> cells;
  visit(area, level, Selection::touching, [&](const Cell& cell) { cells.push_back(cell); });
  return cells;
}

std::vector<Cell> Grid::cells_touching(const LatLonBox& area, const Level& level) const {
  std::vector<Cell> cells;
  visit(area, level, Selection::touching, [&](const Cell& cell) { cells.push_back(cell); });
  return cells;
}

}  // namespace sweepwright::grid
