// The one home of every physical constant and unit definition.
//
// Source: International nautical mile 1852 m: First International Extraordinary Hydrographic
//   Conference, Monaco 1929 [BIPM SI Brochure, 8th ed., table 8]. International foot 0.3048 m and
//   statute mile 5280 ft: international yard and pound agreement, 1959 [NIST SP 811, appendix B].
#pragma once

#include <numbers>

namespace sweepwright {

inline constexpr double kMetresPerNauticalMile = 1852.0;
inline constexpr double kMetresPerFoot = 0.3048;
inline constexpr double kMetresPerStatuteMile = 5280 * kMetresPerFoot;
inline constexpr double kDegreesPerRadian = 180 / std::numbers::pi;

/// WGS 84 equatorial radius [NIMA TR8350.2, table 3.1].
inline constexpr double kWgs84EquatorialRadiusMetres = 6378137.0;

}  // namespace sweepwright
