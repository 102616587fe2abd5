// Geometry as KML elements; private to the formats room.
#pragma once

#include <string>

#include "formats/box_text.hpp"
#include "sweepwright/formats/geometry.hpp"

namespace sweepwright::formats {

/// The element of the geometry, nothing for none. `box_text` remembers boxes from call to call.
void append_kml_geometry(std::string& out, const Geometry& geometry, BoxText& box_text);

}  // namespace sweepwright::formats
