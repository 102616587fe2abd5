// Reads a route: the places that an aircraft, boat or person was to pass, in order.
//
// Conventions: GeoJSON with one LineString, or with points in their order; or a text with one
//   position a line in any notation with one meaning, blank lines and lines that begin with `#`
//   passed over. Legs between the places are shortest lines.
// Domain: 2 to 1000 places; GeoJSON in WGS 84.
// Errors: Error(input) or Error(value) with the line.
#pragma once

#include <string>
#include <string_view>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::formats {

Path parse_route(std::string_view text);

struct RouteFile {
  Path route;
  InputDigest digest;
};

/// `-` is standard input. Errors have the path in front of their place.
RouteFile read_route_file(const std::string& path);

}  // namespace sweepwright::formats
