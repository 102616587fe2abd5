// Reads one number for each cell out of a file of cells: a belief, the PODs of a search.
//
// Problem: the same list of cells comes as GeoJSON, as a table or as JSON, from this program or by
//   hand. All of them become rows of a name and a number that know their place in the file.
// Conventions: GeoJSON: features whose properties have `cell` and the wanted number; features
//   without `cell` (rings, labels) are passed over. JSON: a list `cells` of such objects. CSV: a
//   header row with the columns `cell` and the wanted one; lines that begin with `#` are passed
//   over. `system` names the grid; other members and columns are left alone.
// Errors: Error(input) with line (and JSON pointer): what is missing, no number, a cell that stands
//   twice.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/position/region.hpp"

namespace sweepwright::formats {

struct CellRow {
  std::string name;
  std::string system;  ///< empty when the file names none
  double value = 0;    ///< finite
  Region drawn;        ///< the feature's ground when its system is none of ours; may be empty
  std::string place;   ///< `line 12`
};

struct CellRows {
  std::vector<CellRow> rows;  ///< at least one
  /// The numbers `outside` and `cumulative_pos` beside the cells of JSON and GeoJSON.
  std::optional<double> outside;
  std::optional<double> cumulative_success;
};

/// `wanted`: the number's name, such as `probability`.
CellRows read_cell_rows(std::string_view text, std::string_view wanted);

}  // namespace sweepwright::formats
