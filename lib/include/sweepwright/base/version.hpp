// The version of Sweepwright, as CMakeLists.txt states it: `0.1.0`.
#pragma once

#include <string_view>

namespace sweepwright {

std::string_view version();

}  // namespace sweepwright
