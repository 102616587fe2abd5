#include "sweepwright/grid/lat_lon_box.hpp"

#include <fmt/format.h>

#include <GeographicLib/Constants.hpp>
#include <array>
#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/position/plotting.hpp"

namespace sweepwright::grid {
namespace {

constexpr Length kOutlineTolerance = Length::metres(0.5);

}  // namespace

void check(const LatLonBox& box) {
  for (const Angle latitude : {box.south, box.north}) {
    if (!(std::abs(latitude.degrees()) <= 90)) {
      throw Error(ErrorCode::value,
                  fmt::format("latitude {} is not from -90 to 90", latitude.degrees()),
                  "a box is given as west, south, east, north");
    }
  }
  for (const Angle longitude : {box.west, box.east}) {
    if (!(std::abs(longitude.degrees()) <= 180)) {
      throw Error(ErrorCode::value,
                  fmt::format("longitude {} is not from -180 to 180", longitude.degrees()),
                  "a box across the antimeridian has its west greater than its east");
    }
  }
  if (box.south >= box.north) {
    throw Error(ErrorCode::geometry,
                fmt::format("the box has no height: south {}, north {}", box.south.degrees(),
                            box.north.degrees()),
                "a box is given as west, south, east, north");
  }
  if (box.west == box.east) {
    throw Error(ErrorCode::geometry,
                fmt::format("the box has no width: west and east are both {}", box.west.degrees()),
                "for all longitudes give -180 and 180");
  }
}

Angle width(const LatLonBox& box) {
  const Angle across = box.east - box.west;
  return across.degrees() > 0 ? across : across + Angle::degrees(360);
}

Position centre(const LatLonBox& box) {
  return Position::at((box.south + box.north) / 2, box.west + width(box) / 2);
}

Area area(const LatLonBox& box) {
  // One degree of latitude and longitude has the area M N cos(latitude), with the radii of
  // curvature M and N; it is summed by Gauss's rule with eight points, each with its mirror image
  // [Abramowitz and Stegun, table 25.4].
  constexpr std::array<double, 4> kPoints = {0.1834346424956498, 0.5255324099163290,
                                             0.7966664774136267, 0.9602898564975363};
  constexpr std::array<double, 4> kWeights = {0.3626837833783620, 0.3137066458778873,
                                              0.2223810344533745, 0.1012285362903763};
  const double a = GeographicLib::Constants::WGS84_a();
  const double f = GeographicLib::Constants::WGS84_f();
  const double e2 = f * (2 - f);
  const auto element = [=](double latitude) {
    const double sine = std::sin(latitude);
    const double w = 1 - e2 * sine * sine;
    return a * a * (1 - e2) * std::cos(latitude) / (w * w);
  };
  const double middle = ((box.south + box.north) / 2).radians();
  const double half = ((box.north - box.south) / 2).radians();
  double sum = 0;
  for (std::size_t i = 0; i < kPoints.size(); ++i) {
    sum +=
        kWeights[i] * (element(middle - half * kPoints[i]) + element(middle + half * kPoints[i]));
  }
  return Area::square_metres(sum * half * width(box).radians());
}

Region outline(const LatLonBox& box) {
  if (width(box).degrees() >= 180) {
    throw Error(ErrorCode::geometry,
                fmt::format("a box {} degrees wide is too wide for an area", width(box).degrees()),
                "split it");
  }
  // At a pole there are two corners, at one place but with different longitudes, so that the box is
  // drawn as wide there as it is.
  const Ring corners{Position::at(box.south, box.west), Position::at(box.south, box.east),
                     Position::at(box.north, box.east), Position::at(box.north, box.west)};
  return Region{{Polygon{from_plotted_edges(corners, kOutlineTolerance), {}}}};
}

}  // namespace sweepwright::grid
