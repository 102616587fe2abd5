#include "sweepwright/pattern/creeping_line.hpp"

#include "pattern/ladder_rows.hpp"
#include "sweepwright/sector/divide.hpp"

namespace sweepwright::pattern {

Pattern make_creeping_line(const LadderFromStart& request) {
  return make_ladder(Kind::creeping, request);
}

Pattern make_creeping_line(const Region& region, const RegionPatternOptions& options) {
  const TrueDirection short_side = sector::long_side(region) + Angle::degrees(90);
  return make_ladder(Kind::creeping, ladder_in_region(region, options, short_side));
}

}  // namespace sweepwright::pattern
