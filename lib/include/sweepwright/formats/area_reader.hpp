// Reads a search area that was drawn in a general map editor: GeoJSON or KML.
//
// Problem: such files hold odd things: extra properties, altitudes, rings that are not closed or
//   run the wrong way, nested folders, longitudes past 180, points and lines beside the area. What
//   can be read without guessing is read, and a remark says how; the rest is an error that names
//   the line.
// Conventions: all polygons of the file together are the area; polygons that meet (an area cut at
//   the antimeridian) are joined. Edges are straight in longitude and latitude (RFC 7946 section
//   3.1.1; KML does not say, and is read in the same way) and take the shorter way round. Without
//   any polygon, closed lines are taken for areas, with a remark.
// Domain: WGS 84 only: a file that names another reference system is refused. Longitudes -360 to
//   360.
// Errors: Error(input) with line and JSON pointer or KML path for what cannot be read,
//   Error(geometry) with the same for polygons that make no area.
// Source: RFC 7946; OGC 07-147r2, KML 2.2.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::formats {

struct AreaReading {
  Region region;
  std::string name;                  ///< of the polygon or of the file; empty when it has none
  std::vector<std::string> remarks;  ///< how the odd things were read, and what was left out
};

/// Tells GeoJSON and KML apart by the text itself.
AreaReading parse_area(std::string_view text);
AreaReading parse_geojson_area(std::string_view text);
AreaReading parse_kml_area(std::string_view text);

struct AreaFile {
  AreaReading reading;
  InputDigest digest;
};

/// `-` is standard input. Errors have the path in front of their place.
AreaFile read_area_file(const std::string& path);

}  // namespace sweepwright::formats
