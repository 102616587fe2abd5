#include "sweepwright/pattern/parallel_track.hpp"

#include "pattern/ladder_rows.hpp"
#include "sweepwright/sector/divide.hpp"

namespace sweepwright::pattern {

Pattern make_parallel_track(const LadderFromStart& request) {
  return make_ladder(Kind::parallel, request);
}

Pattern make_parallel_track(const Region& region, const RegionPatternOptions& options) {
  return make_ladder(Kind::parallel, ladder_in_region(region, options, sector::long_side(region)));
}

}  // namespace sweepwright::pattern
