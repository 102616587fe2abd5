// Reads a route: the places that an aircraft, boat or person was to pass, in order.
//
// Problem: a route comes typed line by line, from a receiver (GPX) or from a map editor (GeoJSON,
//   KML). The file must hold one route: which of two is meant is not guessed.
// Conventions: the form is told by the text itself.
//     GPX           one route; else one track of one segment; else its waypoints in their order
//     GeoJSON, KML  one line; else its points in their order; what stands beside a line is left
//                   out, with a remark
//     text          a position a line in any notation with one meaning, blank lines and lines that
//                   begin with `#` passed over
//   Legs between the places are shortest lines, whatever the map editor drew.
// Domain: 2 to 1000 places; WGS 84; longitudes -360 to 360 in map files.
// Errors: Error(input) or Error(value) with the line for what cannot be read, for no route and for
//   several.
// Source: GPX 1.1 schema; RFC 7946; OGC 07-147r2, KML 2.2.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::formats {

struct RouteReading {
  Path route;
  std::string name;                  ///< of the route or of the file; empty when it has none
  std::vector<std::string> remarks;  ///< how the odd things were read, and what was left out
};

RouteReading parse_route(std::string_view text);

struct RouteFile {
  RouteReading reading;
  InputDigest digest;
};

/// `-` is standard input. Errors have the path in front of their place.
RouteFile read_route_file(const std::string& path);

}  // namespace sweepwright::formats
