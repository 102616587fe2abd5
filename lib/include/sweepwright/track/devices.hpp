// Several logs of one crew become one track: two devices on one aircraft do not search twice.
//
// Method: the log with the most fixes leads. Of each further one, in the order of their fixes, only
//   what was flown in times that no earlier one covers is added.
// Conventions: a segment covers the time from its first to its last fix. Logs without times cannot
//   be told apart: they are added whole, and the result says so.
// Promises: P1 no time is covered twice; P2 one log comes back as it was.
// Source: common practice, no source.
#pragma once

#include <cstddef>
#include <vector>

#include "sweepwright/track/track.hpp"

namespace sweepwright::track {

struct JoinedTrack {
  Track track;               ///< its segments in order of time where they have times
  std::size_t left_out = 0;  ///< fixes that another device has better
  bool untimed = false;      ///< some log has no times: it was added whole
};

JoinedTrack join_devices(std::vector<Track> logs);

}  // namespace sweepwright::track
