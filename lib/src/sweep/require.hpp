// Refusals that several files of the room share.
#pragma once

#include <string_view>

#include "sweepwright/base/quantity.hpp"

namespace sweepwright::sweep {

/// Throws Error (value) that names `what` unless the length is finite and above 0.
void require_above_zero(Length length, std::string_view what);

}  // namespace sweepwright::sweep
