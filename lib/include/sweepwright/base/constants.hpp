// The one home of every physical constant and unit definition.
//
// Source: International nautical mile 1852 m: First International Extraordinary Hydrographic
//   Conference, Monaco 1929 [BIPM SI Brochure, 8th ed., table 8]. International foot 0.3048 m and
//   statute mile 5280 ft: international yard and pound agreement, 1959 [NIST SP 811, appendix B].
//   Standard gravity 9.80665 m/s2: 3rd General Conference on Weights and Measures, 1901 [BIPM SI
//   Brochure, from memory]. Avoirdupois pound 0.45359237 kg: agreement of 1959, as the foot. US
//   gallon 231 cubic inches [NIST SP 811, appendix B]; imperial gallon 4.54609 litres [UK Weights
//   and Measures Act 1985, schedule 1]: both from memory.
#pragma once

#include <numbers>

namespace sweepwright {

inline constexpr double kMetresPerNauticalMile = 1852.0;
inline constexpr double kMetresPerFoot = 0.3048;
inline constexpr double kMetresPerStatuteMile = 5280 * kMetresPerFoot;
inline constexpr double kDegreesPerRadian = 180 / std::numbers::pi;

inline constexpr double kStandardGravityMetresPerSecondSquared = 9.80665;
inline constexpr double kKilogramsPerPound = 0.45359237;
inline constexpr double kLitresPerUsGallon = 231 * 2.54 * 2.54 * 2.54 / 1000;
inline constexpr double kLitresPerImperialGallon = 4.54609;

/// WGS 84 equatorial radius [NIMA TR8350.2, table 3.1].
inline constexpr double kWgs84EquatorialRadiusMetres = 6378137.0;

}  // namespace sweepwright
