#include "sweepwright/pattern/creeping_line.hpp"

#include "sweepwright/sector/divide.hpp"

namespace sweepwright::pattern {

Pattern make_creeping_line(const LadderFromStart& request) {
  return make_ladder(Kind::creeping, request);
}

Pattern make_creeping_line(const Region& region, const RegionPatternOptions& options) {
  const TrueDirection short_side = sector::long_side(region) + Angle::degrees(90);
  return make_ladder(
      Kind::creeping,
      LadderInRegion{region, options.first_track.value_or(short_side), options.spacing,
                     options.first_turn, options.turn_room, options.gaps});
}

}  // namespace sweepwright::pattern
