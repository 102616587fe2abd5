#include "sweepwright/flight/glare.hpp"

#include <cmath>

namespace sweepwright::flight {

bool is_low(const SunPosition& sun) {
  return sun.elevation > Angle() && sun.elevation < kGlareElevation;
}

bool faces(TrueDirection track, const SunPosition& sun) {
  return is_low(sun) &&
         std::abs(turn_between(track, sun.azimuth).degrees()) <= kGlareAngle.degrees();
}

Duration time_into_sun(const FlownPattern& flown) {
  Duration sum{};
  for (const FlownLeg& leg : flown.legs) {
    if (!leg.searching || leg.leg.kind != pattern::LegKind::search) continue;
    const TimePoint middle =
        flown.depart + std::chrono::duration_cast<std::chrono::seconds>(leg.start + leg.time / 2);
    if (faces(leg.triangle.track, sun_position(leg.leg.from, middle))) sum += leg.time;
  }
  return sum;
}

std::optional<TrueDirection> leg_direction_across(const SunPosition& sun) {
  if (!is_low(sun)) return std::nullopt;
  const TrueDirection across = sun.azimuth + Angle::degrees(90);
  return across.degrees() < 180 ? across : across.reversed();
}

}  // namespace sweepwright::flight
