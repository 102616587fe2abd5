// The error for a name that a grid cannot read, the same in all systems.
#pragma once

#include <string_view>

#include "sweepwright/base/error.hpp"

namespace sweepwright::grid {

/// `kind` says what the text should have been (`a GARS cell`), `at` is the character where reading
/// failed (from 0), `expected` what should stand there, `example` a good name.
Error name_error(std::string_view kind, std::string_view name, std::size_t at,
                 std::string_view expected, std::string_view example);

}  // namespace sweepwright::grid
