// Parallel track search, single unit (PS): legs along the long side of the sector.
//
// Use: a large sector where the object may be anywhere with equal chance, and no turn is wanted
// more
//   often than needed.
// Source: legs parallel to the major axis [US National SAR Manual Vol I, 1991, para 552.C, seen];
//   commence search point half a spacing inside the corner [civil air search training text, sec. 8,
//   seen]; designator PS [IAMSAR Manual Vol II, ch. 5, from memory].
#pragma once

#include <optional>

#include "sweepwright/pattern/ladder.hpp"

namespace sweepwright::pattern {

/// `first_turn` and which way along the long side the first leg runs choose the corner to start at.
struct RegionPatternOptions {
  Length spacing;
  std::optional<TrueDirection> first_track =
      std::nullopt;  ///< absent: the side that the pattern prefers
  Turn first_turn = Turn::right;
  TurnRoom turn_room = TurnRoom::inside;
  Gaps gaps = Gaps::as_asked;
};

Pattern make_parallel_track(const LadderFromStart& request);
Pattern make_parallel_track(const Region& region, const RegionPatternOptions& options);

}  // namespace sweepwright::pattern
