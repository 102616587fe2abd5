// Track: where a crew was and when, as its device logged it, after cleaning.
//
// Conventions: positions on WGS 84; altitudes above mean sea level as the log states them; times in
//   UTC. Between two fixes of a segment the crew is taken to have gone the shortest way; between
//   two segments nobody knows where it was.
// Promises: P1 length and count are those of the segments alone: nothing is added for gaps.
// Source: segments as in GPX 1.1, trkseg: "a continuous span of track data".
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::track {

/// One line of a log.
struct Fix {
  Position position;
  std::optional<Instant> time;
  std::optional<Length> altitude;  ///< above mean sea level
};

/// Gone without a gap, in order of time.
using Segment = std::vector<Fix>;

struct Track {
  std::string name;    ///< as the log calls it; may be empty
  std::string source;  ///< the file, for messages
  std::vector<Segment> segments;
};

std::size_t fix_count(const Track& track);
/// Over the ground; gaps between segments count nothing.
Length length(const Track& track);

}  // namespace sweepwright::track
