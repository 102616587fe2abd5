// Daylight and glare of a flown pattern, as JSON and in words; private to the formats room.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "sweepwright/flight/search_light.hpp"

namespace sweepwright::formats {

nlohmann::ordered_json light_json(const flight::SearchLight& light);

/// What the crew must know of the light: nothing when all of the search is in it and no leg looks
/// into a low sun.
std::vector<std::string> light_remarks(const flight::SearchLight& light);

}  // namespace sweepwright::formats
