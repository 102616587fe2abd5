#include "sweepwright/position/local_plane.hpp"

#include <fmt/format.h>

#include <GeographicLib/Gnomonic.hpp>
#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright {
namespace {

const GeographicLib::Gnomonic& gnomonic() {
  static const GeographicLib::Gnomonic projection(GeographicLib::Geodesic::WGS84());
  return projection;
}

}  // namespace

PlanePoint LocalPlane::to_plane(Position position) const {
  double east = 0;
  double north = 0;
  gnomonic().Forward(centre_.latitude().degrees(), centre_.longitude().degrees(),
                     position.latitude().degrees(), position.longitude().degrees(), east, north);
  // The projection stretches by 1/cos(r/R): 1,000 km away is 1,008 km on the plane.
  if (!(std::hypot(east, north) <= 1.01 * kLocalPlaneReach.metres())) {
    throw Error(ErrorCode::geometry,
                fmt::format("a place lies {:.0f} km from the middle of the area",
                            geodesic(centre_, position).length.kilometres()),
                fmt::format("keep an area within {:.0f} km of its middle, or split it",
                            kLocalPlaneReach.kilometres()));
  }
  const double angle = axis_.angle().radians();
  return {Length::metres(east * std::cos(angle) - north * std::sin(angle)),
          Length::metres(east * std::sin(angle) + north * std::cos(angle))};
}

Position LocalPlane::to_position(PlanePoint point) const {
  const double angle = axis_.angle().radians();
  const double right = point.right.metres();
  const double up = point.up.metres();
  double latitude = 0;
  double longitude = 0;
  gnomonic().Reverse(centre_.latitude().degrees(), centre_.longitude().degrees(),
                     right * std::cos(angle) + up * std::sin(angle),
                     up * std::cos(angle) - right * std::sin(angle), latitude, longitude);
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

}  // namespace sweepwright
