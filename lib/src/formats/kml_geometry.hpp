// Geometry as KML elements; private to the formats room.
#pragma once

#include <string>

#include "sweepwright/formats/geometry.hpp"

namespace sweepwright::formats {

/// The element of the geometry, nothing for none.
void append_kml_geometry(std::string& out, const Geometry& geometry);

}  // namespace sweepwright::formats
