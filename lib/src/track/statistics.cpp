#include "sweepwright/track/statistics.hpp"

#include <algorithm>

#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::track {
namespace {

template <typename Value>
void widen(std::optional<Value>& least, std::optional<Value>& most, Value value) {
  least = least ? std::min(*least, value) : value;
  most = most ? std::max(*most, value) : value;
}

void add(Span& span, Duration time, Length distance) {
  span.time += time;
  span.distance += distance;
}

}  // namespace

std::optional<Speed> mean_speed(const Span& span) {
  if (span.time.count() <= 0) return std::nullopt;
  return span.distance / span.time;
}

void StatisticsCounter::add(const Fix& fix, bool begins) {
  if (fix.time) widen(statistics_.begin, statistics_.end, *fix.time);
  if (fix.altitude) widen(statistics_.lowest, statistics_.highest, *fix.altitude);
  if (last_ && !begins) {
    const GeodesicLine step = geodesic(last_->position, fix.position);
    const Duration time = fix.time && last_->time ? Duration(*fix.time - *last_->time) : Duration();
    track::add(statistics_.all, time, step.length);
    if (time.count() > 0) widen(statistics_.slowest, statistics_.fastest, step.length / time);
    if (!area_.polygons.empty()) {
      const Position middle = travel(last_->position, step.start_track, step.length * 0.5).position;
      if (contains(area_, middle)) track::add(statistics_.inside, time, step.length);
    }
  }
  last_ = fix;
}

}  // namespace sweepwright::track
