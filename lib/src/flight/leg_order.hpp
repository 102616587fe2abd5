// The legs of a pattern in the order in which they are to be flown, and other orders of its rows;
// private to the flight room.
//
// A row is a search leg, or its parts with the transits between them; cross legs join rows.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/pattern/pattern.hpp"

namespace sweepwright::flight {

struct LegToFly {
  pattern::Leg leg;
  std::optional<int> drawn;
  /// From the end of the leg before to the start of this one, where the crew is free how to get
  /// there. None: both meet in one place.
  std::optional<pattern::Leg> gap;
  std::optional<int> gap_drawn;
};

/// In the order drawn; cross legs between legs of opposite directions become gaps.
std::vector<LegToFly> legs_as_drawn(const pattern::Pattern& pattern);

/// Rows from 0: blocks of twice `skip` rows, each flown 0, skip, 1, skip + 1, ...; what is left
/// over is a block of its own with half its rows skipped.
std::vector<int> skip_and_fill(int rows, int skip);

/// The rows of a ladder in another order, every other one backwards. Empty unless all of the
/// pattern is rows with gaps between.
std::vector<LegToFly> legs_in_order(const std::vector<LegToFly>& drawn,
                                    const std::vector<int>& rows);

/// Number of rows: gaps and 1.
int row_count(const std::vector<LegToFly>& legs);

}  // namespace sweepwright::flight
