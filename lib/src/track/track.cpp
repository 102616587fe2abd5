#include "sweepwright/track/track.hpp"

#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::track {

std::size_t fix_count(const Track& track) {
  std::size_t count = 0;
  for (const Segment& segment : track.segments) count += segment.size();
  return count;
}

Length length(const Track& track) {
  Length total;
  for (const Segment& segment : track.segments) {
    for (std::size_t i = 1; i < segment.size(); ++i) {
      total += geodesic(segment[i - 1].position, segment[i].position).length;
    }
  }
  return total;
}

}  // namespace sweepwright::track
