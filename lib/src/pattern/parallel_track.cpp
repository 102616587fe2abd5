#include "sweepwright/pattern/parallel_track.hpp"

#include "sweepwright/sector/divide.hpp"

namespace sweepwright::pattern {

Pattern make_parallel_track(const LadderFromStart& request) {
  return make_ladder(Kind::parallel, request);
}

Pattern make_parallel_track(const Region& region, const RegionPatternOptions& options) {
  return make_ladder(
      Kind::parallel,
      LadderInRegion{region, options.first_track.value_or(sector::long_side(region)),
                     options.spacing, options.first_turn, options.turn_room, options.gaps});
}

}  // namespace sweepwright::pattern
