// When it is light at a place over a span of time; private to the formats room.
#pragma once

#include <vector>

#include "sweepwright/plan/mission.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::formats {

/// Spans in order that do not overlap, cut at the span asked for.
struct DayBands {
  std::vector<plan::Period> sun;             ///< from sunrise to sunset
  std::vector<plan::Period> civil_twilight;  ///< the same with the civil twilights round it
};

DayBands day_bands(Position place, const plan::Period& span);

}  // namespace sweepwright::formats
