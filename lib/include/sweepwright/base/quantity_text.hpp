// Reads and writes quantities as people write them: `12NM`, `500ft`, `90kt`, `1h30`, `045T`.
//
// Conventions: a number, an optional space, a unit; the number has a decimal point, an optional
//   sign and no exponent. Units are read in any letter case; only a length in a lone `M` is
//   refused: a nautical mile to some, a metre or a statute mile to others. A bare number is an
//   error that names the units that would do.
//
//     length     NM (nmi), km, mi (SM, a statute mile), m, ft
//     speed      kt (kts, knots), mph, km/h (kmh, kph), m/s (mps)
//     area       NM2 (sq NM), km2, mi2, m2, ha; `NM^2` too
//     duration   h, min, s in falling order: `1h30` (1 h 30 min), `1h30min`, `90min`, `45s`;
//                or hours and minutes: `1:30`. A sign counts for the whole.
//     direction  degrees and their north: `045T` true, `030M` magnetic; `45` is an error
//
// Domain: every reader refuses NaN, infinities and trailing text with ErrorCode::value. Signs are
//   read; the caller says which ranges make sense.
// Accuracy: the number is read to the nearest double.
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "sweepwright/base/direction.hpp"
#include "sweepwright/base/quantity.hpp"

namespace sweepwright {

Length parse_length(std::string_view text);
Speed parse_speed(std::string_view text);
/// `400NM2`, `400 sq NM`, `1200km2`.
Area parse_area_size(std::string_view text);
Duration parse_duration(std::string_view text);
/// `045T`, `45 T`, `45.5true` or `030M`, `30 magnetic`; 0 to 360 degrees.
std::variant<TrueDirection, MagneticDirection> parse_direction(std::string_view text);
/// A plain finite number, for values that have no unit (coverage, probability). `what` names it in
/// the error message.
double parse_number(std::string_view text, std::string_view what);
/// A whole number in [least, most]. `what` names it in the error message.
int parse_whole_number(std::string_view text, int least, int most, std::string_view what);

/// The units that people choose between in outputs.
enum class LengthUnit { nautical_mile, kilometre, statute_mile, metre, foot };
enum class SpeedUnit { knot, kilometre_per_hour, statute_mile_per_hour, metre_per_second };

/// `1.25 NM`: the value in `unit` with `decimals` places and the unit's symbol; half away from
/// zero.
std::string format_length(Length length, LengthUnit unit, int decimals);
std::string format_speed(Speed speed, SpeedUnit unit, int decimals);
/// `h:mm:ss`, rounded to the second: `0:05:09`, `12:30:00`, `-0:05:09`.
std::string format_duration(Duration duration);
/// `h:mm`, rounded to the minute: `2:33`.
std::string format_duration_minutes(Duration duration);
/// Three digits and the north: `045T`; 359.6 becomes `000T`.
std::string format_direction(TrueDirection direction);
std::string format_direction(MagneticDirection direction);

}  // namespace sweepwright
