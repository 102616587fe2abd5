#include "flight/leg_timing.hpp"

#include <cmath>

namespace sweepwright::flight {
namespace {

/// Less than this, the ground speed is the same all along.
constexpr double kStraightDegrees = 0.02;
/// More than this, Simpson's rule is applied to each half by itself. Lines that pass near a pole
/// turn fast; kDeepest halvings are enough for any.
constexpr double kCurvedDegrees = 1.5;
constexpr int kDeepest = 16;

double turn_degrees(const GeodesicLine& line) {
  return std::abs(turn_between(line.start_track, line.end_track).degrees());
}

Duration time_along(Position from, const GeodesicLine& line, const WindTriangle& start,
                    const WindTriangle& end, Speed true_airspeed, const Wind& wind, int depth) {
  if (turn_degrees(line) <= kStraightDegrees) return line.length / start.ground_speed;
  if (turn_degrees(line) > kCurvedDegrees && depth < kDeepest) {
    const Arrival middle = travel(from, line.start_track, line.length / 2);
    const WindTriangle half_way = triangle_for_track(middle.track, true_airspeed, wind);
    return time_along(from, {line.length / 2, line.start_track, middle.track}, start, half_way,
                      true_airspeed, wind, depth + 1) +
           time_along(middle.position, {line.length / 2, middle.track, line.end_track}, half_way,
                      end, true_airspeed, wind, depth + 1);
  }
  const TrueDirection middle_track =
      line.start_track + turn_between(line.start_track, line.end_track) / 2;
  const WindTriangle middle = triangle_for_track(middle_track, true_airspeed, wind);
  return (line.length / start.ground_speed + line.length / middle.ground_speed * 4 +
          line.length / end.ground_speed) /
         6;
}

}  // namespace

LegTiming leg_timing(Position from, const GeodesicLine& line, Speed true_airspeed,
                     const Wind& wind) {
  LegTiming timing;
  timing.start = triangle_for_track(line.start_track, true_airspeed, wind);
  timing.end = turn_degrees(line) <= kStraightDegrees
                   ? timing.start
                   : triangle_for_track(line.end_track, true_airspeed, wind);
  timing.time = time_along(from, line, timing.start, timing.end, true_airspeed, wind, 0);
  return timing;
}

}  // namespace sweepwright::flight
