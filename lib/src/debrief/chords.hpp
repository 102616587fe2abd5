// Chords: where a track goes round a stretch, with the jitter of single fixes smoothed out; private
// to the debrief room.
#pragma once

#include <cstddef>
#include <optional>

#include "sweepwright/position/local_plane.hpp"
#include "sweepwright/track/track.hpp"

namespace sweepwright::debrief {

struct StretchMotion {
  std::optional<Speed> speed;           ///< over the ground, along the chord; none without times
  std::optional<double> turn_rate_dps;  ///< degrees a second, without sign; none without times
};

/// Motion round the stretch from fix `index` to the next, of a segment of at least two fixes. At
/// the ends of a segment the chords are as long as there are fixes.
StretchMotion motion(const track::Segment& segment, std::size_t index);

}  // namespace sweepwright::debrief
