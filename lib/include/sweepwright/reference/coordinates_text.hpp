// Reads coordinates of a reference system as people write them.
//
// Conventions: in a geographic system of degrees, latitude and longitude in any notation of
//   position_text.hpp; the numbers count from the system's own equator and prime meridian. In every
//   other system two numbers in the order of the axes, or in any order with the letters N, S, E, W
//   of their directions: `651409.9 313177.3`, `E651409.9 N313177.3`, `313177.3N, 651409.9E`.
// Domain: decimal points only. What can be read in two ways gives both readings, the likeliest
//   first.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/reference/system.hpp"

namespace sweepwright::reference {

struct CoordinatesReading {
  Coordinates coordinates;
  std::string read_as;  ///< in words: "Easting 651409.9 metre, Northing 313177.3 metre"
};

/// At least one reading. Throws Error(value) with `character N` for where.
std::vector<CoordinatesReading> parse_coordinates(std::string_view text, const SystemInfo& system);

struct ConvertedReading {
  Conversion conversion;
  std::string read_as;
};

/// The readings that are places of the system, at least one, brought to WGS 84: `50 10` has one
/// meaning in a system of Europe. Throws as parse_coordinates() and System::to_wgs84(); when no
/// reading is a place of the system, for the likeliest.
std::vector<ConvertedReading> read_coordinates(std::string_view text, const System& system);

}  // namespace sweepwright::reference
