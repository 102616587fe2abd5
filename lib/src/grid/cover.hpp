// Which cells of a lattice of equal squares an area needs.
#pragma once

#include <functional>
#include <vector>

#include "grid/flat.hpp"
#include "grid/lattice.hpp"
#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

/// Columns first to last of one row, both included.
struct Span {
  int first;
  int last;
};

/// Takes a row (counted northward) and its spans, which neither overlap nor touch.
using RowSink = std::function<void(int row, const std::vector<Span>& spans)>;

/// A side of a polygon in whole units, lower end first.
struct Side {
  Ticks low_x, low_y;
  Ticks high_x, high_y;
};

/// The sides of polygons in degrees: ticks from 180 W and the south pole.
std::vector<Side> degree_sides(const FlatRegion& region);
/// The sides of polygons in metres: micrometres.
std::vector<Side> metre_sides(const FlatRegion& region);
inline constexpr Ticks kMicrometresPerMetre = 1'000'000;

/// The cells of side `size` (an even number of units) that polygons with these sides need: rows
/// from north to south, spans eastward.
///
/// Exact for the sides given: no cell missed and none extra. A centre on the outline counts when
/// the outline is the area's east or south side there, so that areas side by side never share or
/// lose a cell.
void cover(std::vector<Side> sides, Ticks size, Selection selection, const RowSink& sink);

/// The same for a box, with the side of a cell in steps. Columns may run past the last column: 180
/// is crossed there.
void cover(const LatLonBox& box, int size, Selection selection, const RowSink& sink);

}  // namespace sweepwright::grid
