// Findings and terrain checks as JSON values; private to the formats room.
#pragma once

#include <nlohmann/json.hpp>

#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

nlohmann::ordered_json findings_value(const std::vector<hazard::Finding>& findings);

/// null for a crew that was not checked against the ground.
nlohmann::ordered_json terrain_value(const plan::Mission& mission,
                                     const plan::Assignment& assignment);

}  // namespace sweepwright::formats
