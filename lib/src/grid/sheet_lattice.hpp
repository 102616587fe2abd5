// Chart sheets in whole steps, and how their cells are numbered.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "grid/lattice.hpp"
#include "sweepwright/grid/chart.hpp"

namespace sweepwright::grid {

inline constexpr int kChartCell = kStepsPerDegree / 4;
inline constexpr int kChartQuarter = kStepsPerDegree / 8;

/// One sheet. `north` and `west` are its limits in steps; `east` of a square may be once round
/// more.
struct SheetLattice {
  std::string code;
  int north;
  int west;
  int rows;
  int columns;

  explicit SheetLattice(const ChartSheet& sheet);
  /// How far the square lies east of the west limit, in [0, once round).
  int offset_east(StepSquare square) const {
    return (square.east - west + kStepsAround) % kStepsAround;
  }
  bool holds(StepSquare square) const {
    return square.north < north && square.north >= north - rows * kChartCell &&
           offset_east(square) < columns * kChartCell;
  }
  /// The name of the cell (depth 0) or quarter (depth 1) that holds the square.
  std::string name_at(StepSquare square, int depth) const;
  /// The south-west corner of a numbered cell.
  StepSquare corner_of(int number) const;
};

/// The sheets that hold the square, the first by the westernmost rule first.
std::vector<const SheetLattice*> sheets_at(const std::vector<SheetLattice>& sheets,
                                           StepSquare square);

/// The square that holds the position: it owns its south and east edges, unless only the square on
/// the other side of an edge is on a sheet. None where no sheet is.
std::optional<StepSquare> chart_square(const std::vector<SheetLattice>& sheets, Position position);

}  // namespace sweepwright::grid
