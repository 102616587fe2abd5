// SearchLight: how a flown pattern stands to the sun: what of it is in the light, and which legs
// look into it.
//
// Conventions: the day is that of the arrival at the commence search point; light is from sunrise
//   to sunset there. The sun's place is that at the middle of the search.
// Accuracy: as daylight.hpp and glare.hpp.
// Source: the headers named.
#pragma once

#include "sweepwright/flight/daylight.hpp"
#include "sweepwright/flight/glare.hpp"

namespace sweepwright::flight {

struct SearchLight {
  Daylight day;
  Duration search{};    ///< from arrival to the end of the last leg
  Duration in_light{};  ///< the part of it between sunrise and sunset
  SunPosition sun;
  Duration into_sun{};                            ///< on search legs that look into a low sun
  std::optional<TrueDirection> direction_across;  ///< of legs that do not
};

SearchLight search_light(const FlownPattern& flown, Position commence_search_point);

}  // namespace sweepwright::flight
