#include "sweepwright/flight/offset.hpp"

#include <cmath>

namespace sweepwright::flight {

Offset make_offset(TrueDirection towards, Length length) {
  const double angle = towards.angle().radians();
  return {length * std::sin(angle), length * std::cos(angle)};
}

Length length(Offset offset) {
  return Length::metres(std::hypot(offset.east.metres(), offset.north.metres()));
}

TrueDirection direction(Offset offset) {
  return TrueDirection(Angle::radians(std::atan2(offset.east.metres(), offset.north.metres())));
}

}  // namespace sweepwright::flight
