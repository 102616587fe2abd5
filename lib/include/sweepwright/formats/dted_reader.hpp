// Reads a DTED file (digital terrain elevation data, levels 0 to 2): a degree cell of heights.
//
// Conventions: profiles run from south to north and follow each other from west to east; posts on
//   all edges belong to the cell. Heights are metres above mean sea level, sign and magnitude in
//   two bytes, high byte first; -32767 is a gap. The sum of each profile's bytes is checked.
// Domain: horizontal datum WGS 84 (or WGS 72, which is within 20 m, with a remark).
// Errors: Error(input): cut off, a profile out of its place or with a wrong sum, another datum.
// Source: MIL-PRF-89020B, Digital Terrain Elevation Data, 3.13: UHL, DSI, ACC and data records
//   [from memory]; agrees with GDAL's driver (dted_reader_test.cpp).
#pragma once

#include <string_view>

#include "sweepwright/formats/elevation_reader.hpp"

namespace sweepwright::formats {

/// True when the bytes begin as a DTED file does.
bool is_dted(std::string_view bytes);

ElevationReading parse_dted(std::string_view bytes, std::string_view name);

}  // namespace sweepwright::formats
