// Reads the area of a GeoJSON object that is already a tree.
#pragma once

#include "formats/json_document.hpp"
#include "sweepwright/formats/area_reader.hpp"

namespace sweepwright::formats {

/// As parse_geojson_area().
AreaReading read_geojson_area(const JsonValue& value);

}  // namespace sweepwright::formats
