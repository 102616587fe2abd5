// The readers of all notations, one file each or one file for a few that are alike.
#pragma once

#include "locate/attempt.hpp"

namespace sweepwright::locate {

Attempt read_latitude_longitude(const PlainText& text, const Options& options);

/// `UTM 18 north 323394 4307396`, `18S 323394mE 4307396mN`, `UPS north 2000000 2000000`.
/// [NGA.STND.0037, zones and bands; northing limits as in GeographicLib]
Attempt read_utm(const PlainText& text, const Options& options);
Attempt read_ups(const PlainText& text, const Options& options);

/// `18SUJ2339407395`, `4Q FJ 1234 5678`, `ZAH1234`. [NGA.STND.0037; USNG: FGDC-STD-011]
Attempt read_mgrs(const PlainText& text, const Options& options);

/// `GJPJ3517`, with up to five more digits of each minute. [Air Force Pamphlet 11-216, 1.38.2]
Attempt read_georef(const PlainText& text, const Options& options);
Attempt read_gars(const PlainText& text, const Options& options);
/// `36/102` and its quarters. 36/102 could be a latitude and longitude too; without letters the
/// cell is the likelier.
Attempt read_plain_quarter(const PlainText& text, const Options& options);
/// `34S/152E` and its quarters; here the latitude and longitude are the likelier.
Attempt read_lettered_quarter(const PlainText& text, const Options& options);
Attempt read_either_quarter(const PlainText& text, const Options& options);
/// `STL 104 D`: a numbered cell of a chart sheet.
Attempt read_chart(const PlainText& text, const Options& options);

/// A user's point by its name: `ABC`.
Attempt read_named_point(const PlainText& text, const Options& options);
/// Bearing and distance from a user's point: `ABC180017`. [ICAO Doc 4444, Appendix 2, item 15]
Attempt read_icao_bearing(const PlainText& text, const Options& options);
/// `FROM 38-15.0N 117-02.5W 045T 12NM`.
Attempt read_bearing_distance(const PlainText& text, const Options& options);

/// Asks every reader. `with_bearings`: also those for bearing and distance, whose starting place is
/// read without.
PositionOutcome read_any(const PlainText& text, const Options& options, bool with_bearings);

}  // namespace sweepwright::locate
