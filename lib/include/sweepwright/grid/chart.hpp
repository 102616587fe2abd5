// Numbered cells on chart sheets: `STL 104`, `STL 104D`.
//
// Rule: each sheet is cut in cells of 15', numbered from 1 at its north-west corner, left to right,
//   then down a row. A letter names the 7.5' quarter: A north-west, B north-east, C south-west, D
//   south-east.
// Overlaps: ground on several sheets takes its name from the westernmost: the sheet whose west
//   limit lies farthest west of the ground (the first in the table among equals). The other names
//   are understood; the cell answers with its first name. chart_names() lists them all.
// Edges: a cell owns its south and east edges, as in the one-degree grid; the rule is silent. On
// the
//   outer limit of all sheets the cell inside owns the edge.
// Sheets: a table, which the user may replace. Limits lie on whole 15' lines, so any number of
//   columns and rows is right. The built-in table is from memory.
// Written: `STL 104D`; read also `stl104d`, `STL-104-D`.
// Source: a text on the conventional grid system that cites US National SAR Supplement App E (May
//   2000); Joint Pub 3-50, US National SAR Manual Vol I (1 February 1991), paragraph 811.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/grid/grid.hpp"

namespace sweepwright::grid {

struct ChartSheet {
  std::string code;  ///< `STL`: capital letters
  std::string name;  ///< `St. Louis`
  LatLonBox limits;
};

/// Reads a table of sheets in the form of lib/data/chart_sheets.csv. `where` names it in messages.
/// Throws Error(input) naming the line: limits that are not on 15' lines, a number of cells that
/// does not fit the limits, a code that stands twice.
std::vector<ChartSheet> read_chart_sheets(std::string_view text, std::string_view where);

/// The sheets of lib/data/chart_sheets.csv.
const std::vector<ChartSheet>& built_in_chart_sheets();

/// The grid of these sheets.
std::unique_ptr<Grid> make_chart_grid(const std::vector<ChartSheet>& sheets);

/// The grid of the built-in sheets.
const Grid& chart_grid();

/// What one sheet calls a place.
struct ChartName {
  std::string sheet;  ///< the sheet's code
  std::string name;
};

/// The names of a place on all sheets that hold it, the first by the westernmost rule first; none
/// where there is no sheet.
std::vector<ChartName> chart_names(const std::vector<ChartSheet>& sheets, Position position,
                                   const Level& level);

}  // namespace sweepwright::grid
