// Reads ground that is given out to units already: GeoJSON features with a property `unit`, as an
// effort plan writes them.
//
// Problem: the step before has decided who searches which rectangle. Its figures (coverage,
//   probabilities) must travel on with the ground, not be lost or worked out anew.
// Conventions: a feature with an area and a `unit` (a text) counts. Its other properties are kept
// as
//   they are when they are texts, numbers, true or false; lists and objects are left out. Areas of
//   features without `unit` are left out too, and counted. Edges are read as in area_reader.hpp.
// Domain: GeoJSON; any other text has no such features.
// Errors: as area_reader.hpp; Error(input) also for a `unit` that is no text or an empty one.
// Source: RFC 7946; the property names are our own (docs/reference/formats.md).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/property.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::formats {

struct UnitArea {
  std::string unit;
  Region region;
  std::vector<Property> kept;  ///< the feature's other properties, in its order
};

struct UnitAreas {
  std::vector<UnitArea> areas;  ///< none when no feature has a `unit`
  std::vector<std::string> remarks;
};

UnitAreas parse_unit_areas(std::string_view text);

}  // namespace sweepwright::formats
