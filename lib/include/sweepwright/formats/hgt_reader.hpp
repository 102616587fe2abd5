// Reads an SRTM height file (.hgt): a degree square of heights without any header.
//
// Conventions: the name is the south-west corner, `N37W106.hgt`; the posts on all four edges
//   belong to the tile. Heights are metres above mean sea level (EGM96 geoid); -32768 is a gap.
// Domain: 1 and 3 arc-second tiles: 3601 x 3601 or 1201 x 1201 posts of 2 bytes, high byte first.
// Errors: Error(input): a name or a size that is not that of a tile.
// Source: USGS, SRTM Topography documentation, sections 2 and 3 [from memory]; sizes and order of
//   bytes agree with GDAL's driver (elevation_reader_test.cpp).
#pragma once

#include <string_view>

#include "sweepwright/formats/elevation_reader.hpp"

namespace sweepwright::formats {

ElevationReading parse_hgt(std::string_view bytes, std::string_view name);

}  // namespace sweepwright::formats
