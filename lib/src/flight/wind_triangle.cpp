#include "sweepwright/flight/wind_triangle.hpp"

#include <fmt/format.h>

#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::flight {
namespace {

std::string knots(Speed speed) {
  return format_speed(speed, SpeedUnit::knot, 1);
}

void require_speeds(Speed true_airspeed, const Wind& wind) {
  if (!(true_airspeed > Speed()) || !std::isfinite(true_airspeed.metres_per_second())) {
    throw Error(ErrorCode::value, fmt::format("the true airspeed is {}", knots(true_airspeed)),
                "give a true airspeed above 0, such as 90kt");
  }
  if (!(wind.speed >= Speed()) || !std::isfinite(wind.speed.metres_per_second())) {
    throw Error(ErrorCode::value, fmt::format("the wind speed is {}", knots(wind.speed)),
                "give a wind speed of 0 or more, and the direction that it comes from");
  }
}

[[noreturn]] void refuse(std::string_view why, TrueDirection track, Speed true_airspeed,
                         const Wind& wind) {
  throw Error(ErrorCode::impossible,
              fmt::format("track {} cannot be flown at a true airspeed of {} in a wind from {} at "
                          "{}: {}",
                          format_direction(track), knots(true_airspeed),
                          format_direction(wind.from), knots(wind.speed), why),
              "fly faster, turn the legs along the wind, or wait for less wind");
}

}  // namespace

WindTriangle triangle_for_track(TrueDirection track, Speed true_airspeed, const Wind& wind) {
  require_speeds(true_airspeed, wind);
  if (wind.speed == Speed()) return {track, track, Angle(), true_airspeed};
  const double off_track = (wind.from.angle() - track.angle()).radians();
  const Speed across = wind.speed * std::sin(off_track);
  const double sine = across / true_airspeed;
  if (std::abs(sine) > 1) {
    refuse(fmt::format("the wind across it is {}", knots(std::abs(sine) * true_airspeed)), track,
           true_airspeed, wind);
  }
  const Angle correction = Angle::radians(std::asin(sine));
  const Speed ground_speed =
      true_airspeed * std::sqrt(1 - sine * sine) - wind.speed * std::cos(off_track);
  if (ground_speed < kLeastGroundSpeed) {
    refuse(fmt::format("the ground speed would be {}", knots(ground_speed)), track, true_airspeed,
           wind);
  }
  return {track, track + correction, correction, ground_speed};
}

WindTriangle triangle_for_heading(TrueDirection heading, Speed true_airspeed, const Wind& wind) {
  require_speeds(true_airspeed, wind);
  const Velocity ground = make_velocity(heading, true_airspeed) + velocity(wind);
  const Speed ground_speed = speed(ground);
  const TrueDirection track = ground_speed == Speed() ? heading : direction(ground);
  return {track, heading, turn_between(track, heading), ground_speed};
}

Wind wind_from(const ObservedMotion& motion) {
  return to_wind(make_velocity(motion.track, motion.ground_speed) -
                 make_velocity(motion.heading, motion.true_airspeed));
}

}  // namespace sweepwright::flight
