// Words of findings; private to the hazard room.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::hazard {

/// `13400 ft`
std::string feet(Length height);
/// `leg 3, leg 5 and 4 more`: the first ten.
std::string listed(const std::vector<std::string>& names);

}  // namespace sweepwright::hazard
