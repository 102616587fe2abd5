#include "debrief/chords.hpp"

#include <cmath>

#include "sweepwright/debrief/sortie.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::debrief {
namespace {

Duration between(const track::Fix& first, const track::Fix& second) {
  return Duration(*second.time - *first.time);
}

/// The fix far enough from `from` in one direction for a chord, or the last one there.
std::size_t chord_end(const track::Segment& segment, std::size_t from, bool forward) {
  std::size_t at = from;
  while (forward ? at + 1 < segment.size() : at > 0) {
    at = forward ? at + 1 : at - 1;
    const Duration time =
        forward ? between(segment[from], segment[at]) : between(segment[at], segment[from]);
    if (time < kChordTime) continue;
    if (geodesic(segment[from].position, segment[at].position).length >= kChordLength) break;
  }
  return at;
}

bool all_have_times(const track::Segment& segment, std::size_t index) {
  return segment[index].time && segment[index + 1].time;
}

}  // namespace

StretchMotion motion(const track::Segment& segment, std::size_t index) {
  if (!all_have_times(segment, index)) return {};
  const std::size_t behind = chord_end(segment, index + 1, false);
  const std::size_t ahead = chord_end(segment, index, true);
  const GeodesicLine stretch = geodesic(segment[index].position, segment[index + 1].position);
  const Position middle =
      travel(segment[index].position, stretch.start_track, stretch.length / 2).position;
  const GeodesicLine back = geodesic(segment[behind].position, middle);
  const GeodesicLine onward = geodesic(middle, segment[ahead].position);
  StretchMotion found;
  const Duration whole = between(segment[behind], segment[ahead]);
  if (whole <= Duration{}) return found;
  found.speed = (back.length + onward.length) / whole;
  // The directions of the chords are those of their middles.
  const Duration apart = whole / 2;
  if (back.length > Length() && onward.length > Length()) {
    found.turn_rate_dps =
        std::abs(turn_between(back.end_track, onward.start_track).degrees()) / apart.count();
  }
  return found;
}

}  // namespace sweepwright::debrief
