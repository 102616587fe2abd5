// Looks an uncorrected sweep width up in a width table.
#pragma once

#include "sweepwright/sweep/tables.hpp"
#include "sweepwright/sweep/working.hpp"

namespace sweepwright::sweep {

/// Where in a table to look. `height` counts only in a table with heights.
struct TablePlace {
  std::string object;
  std::optional<Length> visibility;
  std::optional<Length> height;
};

struct TableWidth {
  Length width;
  Working working;
};

/// Throws Error: `value` when a needed place is not given, `impossible` outside the table.
TableWidth look_up_width(const WidthTable& table, const TablePlace& place);

}  // namespace sweepwright::sweep
