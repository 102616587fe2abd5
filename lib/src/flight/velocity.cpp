#include "sweepwright/flight/velocity.hpp"

#include <cmath>

namespace sweepwright::flight {

Velocity make_velocity(TrueDirection towards, Speed speed) {
  const double angle = towards.angle().radians();
  return {speed * std::sin(angle), speed * std::cos(angle)};
}

Speed speed(Velocity velocity) {
  return Speed::metres_per_second(
      std::hypot(velocity.east.metres_per_second(), velocity.north.metres_per_second()));
}

TrueDirection direction(Velocity velocity) {
  return TrueDirection(Angle::radians(
      std::atan2(velocity.east.metres_per_second(), velocity.north.metres_per_second())));
}

}  // namespace sweepwright::flight
