// Daylight: sunrise, sunset and civil twilight at a place, and how much of a search is in the
// light.
//
// Conventions: a day is the local one: twelve hours each side of the moment when the sun stands
//   highest nearest to 12:00 local mean time of the date. Sunrise and sunset are when the sun's
//   centre is 50' below the level horizon (34' of refraction, 16' of radius); civil twilight
//   begins and ends at 6 degrees below. Height of eye and hills are not counted.
// Domain: everywhere; years 1900 to 2100. Where the sun does not cross the height that day, the
//   time is absent and the state says why.
// Accuracy: against a general astronomy library, 1,000 random place-days within 65 degrees of the
//   equator: 10 s up to 60 degrees; published and polar cases (daylight_test.cpp).
// Source: heights: US Naval Observatory, definitions of rise, set and twilight (from memory).
#pragma once

#include <chrono>
#include <optional>
#include <string_view>

#include "sweepwright/flight/sun.hpp"

namespace sweepwright::flight {

inline constexpr Angle kSunriseElevation = Angle::degrees(-50.0 / 60);
inline constexpr Angle kCivilTwilightElevation = Angle::degrees(-6);

enum class SunState {
  crosses,  ///< comes above the height, or goes below it, that day
  above,    ///< stays above all day: polar day
  below,    ///< stays below all day: polar night
};

/// When the sun is above a height.
struct SunTimes {
  std::optional<TimePoint> rise;
  std::optional<TimePoint> set;
  SunState state = SunState::crosses;
};

struct Daylight {
  TimePoint noon;  ///< the sun is highest
  SunTimes sun;
  SunTimes civil_twilight;
};

SunTimes sun_times(Position place, std::chrono::year_month_day date, Angle elevation);
Daylight daylight(Position place, std::chrono::year_month_day date);

/// The date on which a time falls there, by local mean time.
std::chrono::year_month_day local_date(Position place, TimePoint time);

/// How much of a span of time the sun is above a height.
Duration time_in_light(Position place, TimePoint from, TimePoint to,
                       Angle elevation = kSunriseElevation);

}  // namespace sweepwright::flight
