// How figures are written on sheets, each kind in one way; private to the formats room.
#pragma once

#include <chrono>
#include <string>

#include "sweepwright/base/direction.hpp"
#include "sweepwright/base/quantity.hpp"
#include "sweepwright/plan/mission.hpp"
#include "sweepwright/position/geodesic.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::formats {

/// `12.35 NM`
std::string nautical_miles_text(Length length);
/// `12.35`
std::string nautical_miles_number(Length length);
/// `0.88 NM (1633 m)`: for what is set on an instrument that may show either.
std::string spacing_text(Length length);
/// `1000 ft`
std::string feet_text(Length length);
/// `90 kt`
std::string knots_text(Speed speed);
/// `117.3 NM2 (402.5 km2)`
std::string area_text(Area area);
/// `68 %`
std::string percent_text(double share);
/// `095T`, or `095T to 097T` when the two ends differ by a degree or more.
std::string track_text(const GeodesicLine& line);
/// The same without the north: `095`, `095 to 097`.
std::string track_number(const GeodesicLine& line);
/// `38-45.00N 117-02.50W`
std::string position_text(Position position);
/// `14 Jul 2026 06:00 to 20:00 local (UTC-7)`
std::string local_period_text(const plan::Period& period, std::chrono::minutes offset_from_utc);
/// `14 Jul 2026 13:00 to 15 Jul 2026 03:00 UTC`
/// The clock at a place with that offset, `07:03`.
std::string clock_text(TimePoint time, std::chrono::minutes offset_from_utc);
/// The same, `07:03:20`, so long after a point in time.
std::string clock_seconds_text(TimePoint since, Duration after,
                               std::chrono::minutes offset_from_utc);
std::string utc_period_text(const plan::Period& period);

}  // namespace sweepwright::formats
