// Reads an Esri ASCII grid: a header of keywords, then heights as plain numbers.
//
// Conventions: keywords in any letter case and order: ncols, nrows, xllcorner or xllcenter,
//   yllcorner or yllcenter, cellsize (or dx and dy), nodata_value. Rows from north to south. A
//   height stands for its cell's ground. The form states no unit, no reference system and no
//   vertical reference.
// Domain: degrees on WGS 84, or metres of a UTM zone that the options name. Heights above 100 km
//   in either direction are refused, whatever their unit.
// Errors: Error(input) with the line.
// Source: Esri, ArcGIS documentation, Esri ASCII raster format [from memory]; agrees with GDAL's
//   driver (elevation_reader_test.cpp).
#pragma once

#include <string_view>

#include "sweepwright/formats/elevation_reader.hpp"

namespace sweepwright::formats {

ElevationReading parse_esri_ascii(std::string_view text, std::string_view name,
                                  const ElevationOptions& options = {});

}  // namespace sweepwright::formats
