// Endurance: what of a flown pattern the fuel allows, and when to leave for home at the latest.
//
// Problem: a crew must be back with its reserve untouched. From each place of the pattern the way
//   home takes its own time in the wind.
// Conventions: endurance is how long the usable fuel lasts from departure, the reserve included.
//   Bingo is the latest time to leave the pattern for the base so that the reserve is left on
//   arrival; a crew that flies on past it lands with less.
// Domain: a flown pattern with a base. Endurance and reserve of 0 or more.
// Accuracy: bingo is found to a second along straight parts; where it falls into a turn, the
//   turn's start is taken (endurance_test.cpp).
// Promises: P1 leaving at bingo, the crew lands with the reserve left; P2 when the whole pattern
//   fits, bingo is not before its end.
// Source: endurance = transit out + on scene + transit back + reserve [IAMSAR Manual Vol II, ch.
//   5, from memory].
#pragma once

#include <optional>

#include "sweepwright/flight/flown_pattern.hpp"

namespace sweepwright::flight {

struct EnduranceLimits {
  Duration endurance{};  ///< from departure, the reserve included
  Duration reserve{};
};

struct EnduranceUse {
  Duration needed{};  ///< by the whole flight, the reserve included
  Duration spare{};   ///< endurance less what is needed; below 0: short
  /// Latest time to leave the pattern, since departure; never after its end. None: the crew cannot
  /// even reach the commence search point and come back.
  std::optional<Duration> bingo;
  int search_legs = 0;          ///< of the whole pattern, parts counted
  int search_legs_flown = 0;    ///< that can be ended in time
  std::optional<int> short_of;  ///< number, in the order flown from 1, of the leg that bingo cuts
  bool is_enough() const { return spare >= Duration(); }
};

/// How long the way to the base takes from a place, begun then, on the transit airspeed.
Duration time_home(Position from, Position base, const Aircraft& aircraft, const WindField& wind,
                   const FlyOptions& options, Duration since_departure);

/// Throws Error(value) without a base, or for an endurance or reserve below 0.
EnduranceUse endurance_use(const FlownPattern& flown, const Aircraft& aircraft,
                           const WindField& wind, const FlyOptions& options,
                           const EnduranceLimits& limits);

}  // namespace sweepwright::flight
