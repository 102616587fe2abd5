// Reads a GeoTIFF of heights.
//
// Conventions: one band of whole or floating numbers, north up. The raster type says whether a
//   height stands for a place (PixelIsPoint) or for the ground round it (PixelIsArea, the
//   default). GDAL's text tag for gaps is read. Heights are in the vertical unit of the file, if
//   it states one.
// Domain: geographic on WGS 84 or NAD 83, or UTM on either, all within metres of each other; every
//   other reference system is refused. Compressions as libtiff has them. Rotated images and images
//   with several tie points are refused, as are heights above an ellipsoid.
// Errors: Error(input) with what the file holds instead.
// Source: OGC 19-008r4, GeoTIFF 1.1, sections 7 and annex C (tags 33550, 33922, 34735 to 34737)
//   [from memory], TIFF through libtiff; agrees with GDAL's driver (geotiff_reader_test.cpp).
#pragma once

#include <string_view>

#include "sweepwright/formats/elevation_reader.hpp"

namespace sweepwright::formats {

/// True when the bytes begin as a TIFF file does.
bool is_tiff(std::string_view bytes);

ElevationReading parse_geotiff(std::string_view bytes, std::string_view name);

}  // namespace sweepwright::formats
