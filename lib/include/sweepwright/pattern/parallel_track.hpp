// Parallel track search, single unit (PS): legs along the long side of the sector.
//
// Use: a large sector where the object may be anywhere with equal chance, and as few turns are
//   wanted as can be.
// Source: legs parallel to the major axis [US National SAR Manual Vol I, 1991, para 552.C, seen];
//   commence search point half a spacing inside the corner [civil air search training text, sec. 8,
//   seen]; designator PS [IAMSAR Manual Vol II, ch. 5, from memory].
#pragma once

#include "sweepwright/pattern/ladder.hpp"

namespace sweepwright::pattern {

Pattern make_parallel_track(const LadderFromStart& request);
Pattern make_parallel_track(const Region& region, const RegionPatternOptions& options);

}  // namespace sweepwright::pattern
