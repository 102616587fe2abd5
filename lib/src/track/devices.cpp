#include "sweepwright/track/devices.hpp"

#include <algorithm>
#include <utility>

namespace sweepwright::track {
namespace {

struct Covered {
  Instant from;
  Instant to;
};

bool covers(const std::vector<Covered>& covered, Instant time) {
  return std::any_of(covered.begin(), covered.end(),
                     [&](const Covered& span) { return span.from <= time && time <= span.to; });
}

bool timed(const Segment& segment) {
  return std::all_of(segment.begin(), segment.end(),
                     [](const Fix& fix) { return fix.time.has_value(); });
}

/// The parts of a segment outside all spans: cut as well where two fixes lie on both sides of one.
std::vector<Segment> uncovered(const Segment& segment, const std::vector<Covered>& covered) {
  std::vector<Segment> parts;
  const Fix* last = nullptr;
  for (const Fix& fix : segment) {
    if (covers(covered, *fix.time)) {
      last = nullptr;
      continue;
    }
    const bool across =
        last != nullptr && std::any_of(covered.begin(), covered.end(), [&](const Covered& span) {
          return *last->time < span.from && span.to < *fix.time;
        });
    if (last == nullptr || across) parts.emplace_back();
    parts.back().push_back(fix);
    last = &fix;
  }
  return parts;
}

}  // namespace

JoinedTrack join_devices(std::vector<Track> logs) {
  std::stable_sort(logs.begin(), logs.end(),
                   [](const Track& a, const Track& b) { return fix_count(a) > fix_count(b); });
  JoinedTrack joined;
  std::vector<Covered> covered;
  for (Track& log : logs) {
    if (joined.track.source.empty()) {
      joined.track.name = log.name;
      joined.track.source = log.source;
    }
    std::vector<Covered> own;
    for (Segment& segment : log.segments) {
      if (segment.empty()) continue;
      if (!timed(segment)) {
        joined.untimed = true;
        joined.track.segments.push_back(std::move(segment));
        continue;
      }
      joined.left_out += segment.size();
      own.push_back({*segment.front().time, *segment.back().time});
      for (Segment& part : uncovered(segment, covered)) {
        joined.left_out -= part.size();
        joined.track.segments.push_back(std::move(part));
      }
    }
    covered.insert(covered.end(), own.begin(), own.end());
  }
  std::stable_sort(joined.track.segments.begin(), joined.track.segments.end(),
                   [](const Segment& a, const Segment& b) {
                     return a.front().time && b.front().time && *a.front().time < *b.front().time;
                   });
  return joined;
}

}  // namespace sweepwright::track
