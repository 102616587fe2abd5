// Glare: a low sun ahead of the crew, and leg directions that keep it out of their eyes.
//
// Problem: towards a low sun nobody sees a thing, and every other leg of a ladder may face it.
// Conventions: a leg faces the sun when its track is within kGlareAngle of the sun's azimuth
//   while the sun stands between the horizon and kGlareElevation.
// Accuracy: as sun.hpp; the sun is taken at each leg's middle time, seen from its start.
// Source: common practice, no source; the two angles are our own choice.
#pragma once

#include <optional>

#include "sweepwright/flight/flown_pattern.hpp"
#include "sweepwright/flight/sun.hpp"

namespace sweepwright::flight {

inline constexpr Angle kGlareAngle = Angle::degrees(30);
inline constexpr Angle kGlareElevation = Angle::degrees(30);

/// The sun is up, and low enough to blind.
bool is_low(const SunPosition& sun);
bool faces(TrueDirection track, const SunPosition& sun);

/// Time on search legs that face the sun.
Duration time_into_sun(const FlownPattern& flown);

/// Search legs at right angles to a low sun face it on neither way: one of the two directions,
/// below 180 degrees. None when the sun is not low.
std::optional<TrueDirection> leg_direction_across(const SunPosition& sun);

}  // namespace sweepwright::flight
