// Reads the area of a GeoJSON object that is already a tree; private to the formats room.
#pragma once

#include "formats/geojson_place.hpp"
#include "sweepwright/formats/area_reader.hpp"

namespace sweepwright::formats {

/// Throws Error(input) for what is no object, or not in WGS 84: RFC 7946 knows nothing else, but
/// files of the older GeoJSON may name another reference system.
void require_geojson(const GeoJsonPlace& root);

/// The area of a collection, a feature or a geometry within a file.
AreaReading read_geojson_area(const GeoJsonPlace& place);

/// As parse_geojson_area().
AreaReading read_geojson_area(const JsonValue& value);

}  // namespace sweepwright::formats
