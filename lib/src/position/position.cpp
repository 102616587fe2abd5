#include "sweepwright/position/position.hpp"

#include <fmt/format.h>

#include <cmath>

#include "sweepwright/base/direction.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright {

Position Position::at(Angle latitude, Angle longitude) {
  if (!(std::abs(latitude.degrees()) <= 90)) {
    throw Error(ErrorCode::value,
                fmt::format("latitude {} is not from -90 to 90", latitude.degrees()),
                "latitude comes first, then longitude");
  }
  if (!std::isfinite(longitude.degrees())) {
    throw Error(ErrorCode::value, fmt::format("longitude {} is not a number", longitude.degrees()));
  }
  return Position(latitude, normalized_180(longitude));
}

}  // namespace sweepwright
