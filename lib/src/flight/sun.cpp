#include "sweepwright/flight/sun.hpp"

#include <cmath>

namespace sweepwright::flight {
namespace {

/// Noon of 1 January 2000, from which the formulas count days.
constexpr TimePoint kEpoch =
    std::chrono::sys_days(std::chrono::year(2000) / 1 / 1) + std::chrono::hours(12);

double sin_deg(double degrees) {
  return std::sin(Angle::degrees(degrees).radians());
}
double cos_deg(double degrees) {
  return std::cos(Angle::degrees(degrees).radians());
}

/// The sun among the stars.
struct Equatorial {
  double right_ascension_deg = 0;
  double declination_deg = 0;
  double sidereal_deg = 0;  ///< at Greenwich
};

Equatorial equatorial(TimePoint time) {
  const double days = Duration(time - kEpoch).count() / 86400;
  const double t = days / 36525;
  const double mean_longitude = 280.46646 + t * (36000.76983 + t * 0.0003032);
  const double anomaly = 357.52911 + t * (35999.05029 - t * 0.0001537);
  const double centre = sin_deg(anomaly) * (1.914602 - t * (0.004817 + t * 0.000014)) +
                        sin_deg(2 * anomaly) * (0.019993 - t * 0.000101) +
                        sin_deg(3 * anomaly) * 0.000289;
  const double node = 125.04 - 1934.136 * t;
  const double longitude = mean_longitude + centre - 0.00569 - 0.00478 * sin_deg(node);
  const double obliquity = 23.0 + 26 / 60.0 +
                           (21.448 - t * (46.815 + t * (0.00059 - t * 0.001813))) / 3600 +
                           0.00256 * cos_deg(node);
  Equatorial sun;
  sun.right_ascension_deg =
      Angle::radians(std::atan2(cos_deg(obliquity) * sin_deg(longitude), cos_deg(longitude)))
          .degrees();
  sun.declination_deg =
      Angle::radians(std::asin(sin_deg(obliquity) * sin_deg(longitude))).degrees();
  sun.sidereal_deg =
      280.46061837 + 360.98564736629 * days - 0.00478 * sin_deg(node) * cos_deg(obliquity);
  return sun;
}

}  // namespace

Angle hour_angle(Position place, TimePoint time) {
  const Equatorial sun = equatorial(time);
  return normalized_180(Angle::degrees(sun.sidereal_deg - sun.right_ascension_deg) +
                        place.longitude());
}

SunPosition sun_position(Position place, TimePoint time) {
  const double declination = equatorial(time).declination_deg;
  const double hour = hour_angle(place, time).degrees();
  const double latitude = place.latitude().degrees();
  const double up = sin_deg(latitude) * sin_deg(declination) +
                    cos_deg(latitude) * cos_deg(declination) * cos_deg(hour);
  const double north = cos_deg(latitude) * sin_deg(declination) -
                       sin_deg(latitude) * cos_deg(declination) * cos_deg(hour);
  const double east = -cos_deg(declination) * sin_deg(hour);
  return {TrueDirection(Angle::radians(std::atan2(east, north))),
          Angle::radians(std::atan2(up, std::hypot(east, north)))};
}

}  // namespace sweepwright::flight
