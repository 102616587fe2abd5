// Creeping line search, single unit (CS): legs along the short side, creeping along the long one.
//
// Use: where the object is likelier at one end of the sector, or one end must be seen first; also
//   along a route.
// Source: legs along the minor axis, creep along the major axis [IAMSAR Manual Vol II, ch. 5, from
//   memory]; commence search point as in parallel_track.hpp.
#pragma once

#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::pattern {

Pattern make_creeping_line(const LadderFromStart& request);
Pattern make_creeping_line(const Region& region, const RegionPatternOptions& options);

}  // namespace sweepwright::pattern
