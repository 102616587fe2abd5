#include "sweepwright/flight/ladder_speeds.hpp"

namespace sweepwright::flight {

pattern::LadderSpeeds ladder_speeds(TrueDirection first_track, pattern::Turn first_turn,
                                    Speed true_airspeed, const Wind& wind) {
  const auto along = [&](TrueDirection track) {
    return triangle_for_track(track, true_airspeed, wind).ground_speed;
  };
  return {along(first_track), along(first_track.reversed()),
          along(first_track + pattern::quarter_turn(first_turn))};
}

}  // namespace sweepwright::flight
