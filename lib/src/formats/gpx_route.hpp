// The one route of a GPX file; private to the formats room.
#pragma once

#include <string_view>

#include "sweepwright/formats/route_reader.hpp"

namespace sweepwright::formats {

/// True when the outermost element is `gpx`, whether or not the rest can be read.
bool is_gpx(std::string_view text);

/// Throws Error(input) with the line. The reading may have fewer than two places.
RouteReading read_gpx_route(std::string_view text);

}  // namespace sweepwright::formats
