// CoverageFrame: the raster on which coverage is reckoned, and where its cells lie.
//
// Problem: what a crew swept is reckoned cell by cell, in a plane on which its legs are straight.
// Conventions: a LocalPlane about the middle of the area, north up there; square cells, row by row
//   from below, each row from the left: cell (column, row) has the number row x columns + column.
// Domain: 1 to kMostCoverageCells cells, none further than kCoverageReach from the middle;
//   everywhere, round a pole and across the antimeridian included. Larger areas are refused.
// Accuracy: lengths on the plane are too long by at most (r / 6,371 km)^2 at distance r from the
//   middle: 0.004 % at 40 km, 0.1 % at kCoverageReach (coverage_frame_test.cpp).
// Promises: P1 cell_centre() and cell_outline() of one cell agree; P2 every place of the area lies
//   in a cell, but for a thousandth of a cell at its edges.
// Source: the gnomonic plane's scale, J. P. Snyder, Map Projections: A Working Manual, USGS
//   Professional Paper 1395 (1987), section 22 [from memory].
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "sweepwright/position/local_plane.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::debrief {

inline constexpr std::size_t kMostCoverageCells = 25'000'000;
inline constexpr Length kCoverageReach = Length::kilometres(200);

struct CoverageFrame {
  LocalPlane plane{Position()};
  PlanePoint corner;  ///< lower left, of the first cell
  Length cell;        ///< side of a cell
  std::size_t columns = 0;
  std::size_t rows = 0;
  std::size_t cells() const { return columns * rows; }
  Area cell_area() const { return cell * cell; }
};

/// The raster that covers an area, its cells' middle lying on the area's. Throws Error(value) for a
/// side that is not above 0 or too many cells, Error(geometry) for an area that reaches too far.
CoverageFrame coverage_frame(const Region& area, Length cell);

/// The least side of cells with which the area needs no more than `most` of them.
Length least_cell(const Region& area, std::size_t most);

Position cell_centre(const CoverageFrame& frame, std::size_t cell);
Region cell_outline(const CoverageFrame& frame, std::size_t cell);

/// The numbers of the cells whose middle lies in the region, rising. A region that reaches beyond
/// the raster counts as far as the raster goes.
std::vector<std::size_t> cells_inside(const CoverageFrame& frame, const Region& region);

}  // namespace sweepwright::debrief
