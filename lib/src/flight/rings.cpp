#include "sweepwright/flight/rings.hpp"

#include <fmt/format.h>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::flight {
namespace {

constexpr int kPlaces = 180;

}  // namespace

RangeRing distance_ring(Position centre, Length radius) {
  if (!(radius > Length() && radius <= kFarthestRing)) {
    throw Error(
        ErrorCode::value,
        fmt::format("a ring of {} cannot be drawn",
                    format_length(radius, LengthUnit::nautical_mile, 2)),
        fmt::format("give a distance above 0, up to {:.0f} NM", kFarthestRing.nautical_miles()));
  }
  RangeRing ring{centre, radius, {}};
  for (int i = 0; i < kPlaces; ++i) {
    ring.line.push_back(
        travel(centre, TrueDirection::degrees(360.0 * i / kPlaces), radius).position);
  }
  ring.line.push_back(ring.line.front());
  return ring;
}

RangeRing time_ring(Position from, Duration time, Speed true_airspeed, const Wind& wind) {
  if (!(time > Duration())) {
    throw Error(ErrorCode::value,
                fmt::format("a ring of {} cannot be drawn", format_duration(time)),
                "give a time above 0, such as 10min");
  }
  if (!(true_airspeed > Speed())) {
    throw Error(ErrorCode::value, "the speed is not above 0", "give a speed such as 90kt");
  }
  return distance_ring(travel(from, wind.from.reversed(), wind.speed * time).position,
                       true_airspeed * time);
}

}  // namespace sweepwright::flight
