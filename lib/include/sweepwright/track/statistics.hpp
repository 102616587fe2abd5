// Statistics of a track: how long, how far, how fast, how high, and how much of it in an area.
//
// Conventions: a step between two fixes of a segment is inside when its middle is. Gaps count
//   nothing. Speeds are over the ground, step by step; their mean is distance over time.
// Promises: P1 inside and outside add up to the whole; P2 the counter needs constant memory.
// Source: plain arithmetic.
#pragma once

#include <optional>

#include "sweepwright/position/region.hpp"
#include "sweepwright/track/track.hpp"

namespace sweepwright::track {

struct Span {
  Duration time{};
  Length distance;
};

struct TrackStatistics {
  std::optional<Instant> begin;  ///< first and last time of the log
  std::optional<Instant> end;
  Span all;
  Span inside;  ///< the area; nothing without one
  std::optional<Speed> slowest;
  std::optional<Speed> fastest;
  std::optional<Length> lowest;  ///< as the log states altitudes
  std::optional<Length> highest;
};

/// Mean speed over the ground; none without times.
std::optional<Speed> mean_speed(const Span& span);

class StatisticsCounter {
 public:
  explicit StatisticsCounter(Region area = {}) : area_(std::move(area)) {}
  void add(const Fix& fix, bool begins);
  const TrackStatistics& statistics() const { return statistics_; }

 private:
  Region area_;
  TrackStatistics statistics_;
  std::optional<Fix> last_;
};

}  // namespace sweepwright::track
