#include "sweepwright/grid/clip.hpp"

#include <algorithm>
#include <map>
#include <string>

#include "grid/flat.hpp"
#include "grid/flat_common.hpp"

namespace sweepwright::grid {
namespace {

constexpr double kLeastPart = 1e-3;        // square metres
constexpr double kWhole = 1 - 1e-9;        // of a cell of parallels and meridians
constexpr double kWholeRegion = 1 - 1e-6;  // of another cell
constexpr double kSeam = 1e-5;

FlatBounds bounds(const LatLonBox& box) {
  return {{box.west.degrees(), box.south.degrees()}, {box.east.degrees(), box.north.degrees()}};
}

/// Gives the area's part in each box. Boxes that come in rows from the north, each row eastward,
/// cost least: ground that is passed is dropped. In any other order the area is cut anew.
class Strips {
 public:
  explicit Strips(const FlatRegion& area) : area_(area), rest_(area) {}

  FlatRegion part_in(const FlatBounds& box) {
    if (box.low.y != row_.low.y || box.high.y != row_.high.y) start_row(box);
    if (box.low.x < passed_) start_row(box);
    passed_ = box.low.x;
    strip_ = cut(strip_, Keep::east, box.low.x);
    return cut(strip_, Keep::west, box.high.x);
  }

 private:
  void start_row(const FlatBounds& box) {
    if (box.high.y > top_) rest_ = area_;
    rest_ = cut(rest_, Keep::south, box.high.y);
    top_ = box.high.y;
    strip_ = cut(rest_, Keep::north, box.low.y);
    row_ = box;
    passed_ = box.low.x;
  }

  const FlatRegion area_;
  FlatRegion rest_;   ///< the area south of `top_`
  FlatRegion strip_;  ///< the area's part in the row, east of `passed_`
  double top_ = 90;
  FlatBounds row_{{0, 91}, {0, 91}};
  double passed_ = 0;
};

}  // namespace

void visit_clipped(const Grid& grid, const Region& area_wanted, const Level& level,
                   const ClippedSink& sink) {
  const FlatRegion wanted = flat(area_wanted);
  Strips strips(wanted);
  grid.visit(area_wanted, level, Selection::touching, [&](const Cell& cell) {
    FlatRegion part;
    if (cell.box) {
      part = strips.part_in(bounds(*cell.box));
    } else {
      const FlatRegion ground = flat(cell.region);
      part = common(cut(wanted, grid::bounds(ground)), ground);
    }
    const Area shared = area_of_degrees(part);
    if (shared.square_metres() < kLeastPart) return;
    const Area all = area(cell);
    const bool whole = shared / all >= (cell.box ? kWhole : kWholeRegion);
    sink({cell, whole ? outline(cell) : from_flat(part), whole ? all : shared, whole});
  });
}

std::vector<SharedCell> convert_cells(const std::vector<Cell>& cells, const Grid& grid,
                                      const Level& level) {
  std::vector<SharedCell> found;
  std::map<std::string, std::size_t, std::less<>> places;
  for (const Cell& old : cells) {
    const Area old_area = area(old);
    visit_clipped(grid, outline(old), level, [&](const ClippedCell& part) {
      const Area whole = area(part.cell);
      if (part.area < std::min(old_area, whole) * kSeam) return;
      const auto [place, is_new] = places.try_emplace(part.cell.name, found.size());
      if (is_new) found.push_back({part.cell, Area{}, 0});
      SharedCell& shared = found[place->second];
      shared.shared += part.area;
      shared.share = std::min(1.0, shared.shared / whole);
    });
  }
  return found;
}

}  // namespace sweepwright::grid
