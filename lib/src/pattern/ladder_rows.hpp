// The rows of a ladder before they are joined: one crew may fly all of them, or several crews share
// them; private to the pattern room.
//
// Conventions: rows stand in the order of creeping; the parts of a row in the order in which they
//   are met on the first track, and each part runs that way. A concave area breaks a row into
//   parts.
#pragma once

#include <vector>

#include "sweepwright/pattern/ladder.hpp"

namespace sweepwright::pattern {

struct RowPart {
  Position from;
  Position to;
};

using LadderRow = std::vector<RowPart>;

struct LadderRows {
  std::vector<LadderRow> rows;  ///< a row without parts found no ground
  Length spacing;               ///< as drawn
  std::vector<std::string> remarks;
};

/// Throw as make_ladder().
LadderRows ladder_rows(const LadderFromStart& request);
LadderRows ladder_rows(const LadderInRegion& request);

/// The legs along these rows, to and fro, with cross legs between rows and transit legs between the
/// parts of a row.
std::vector<Leg> joined_rows(const std::vector<LadderRow>& rows);

/// The request for a region whose legs run along `along` unless the options name a track.
LadderInRegion ladder_in_region(const Region& region, const RegionPatternOptions& options,
                                TrueDirection along);

}  // namespace sweepwright::pattern
