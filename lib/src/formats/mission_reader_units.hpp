// Reads the search units of a mission file.
#pragma once

#include <vector>

#include "formats/json_cursor.hpp"
#include "sweepwright/plan/mission.hpp"

namespace sweepwright::formats {

std::vector<plan::SearchUnit> search_units(const JsonCursor& cursor);

}  // namespace sweepwright::formats
