// What the registry says about a system or a shift.
#pragma once

#include "reference/proj_library.hpp"
#include "sweepwright/reference/system.hpp"

namespace sweepwright::reference {

/// The number after `EPSG:`. Throws Error(value) for any other text.
std::string registry_number(std::string_view code);

/// Throws Error(value) when the registry has no such system.
ProjObject find_system(PJ_CONTEXT* context, const std::string& number);

/// Throws Error(value) for a system that is neither geographic nor projected in two dimensions.
SystemInfo describe(PJ_CONTEXT* context, const PJ* system, const std::string& number);

/// The whole Earth where the registry states none.
Area area_of_use(PJ_CONTEXT* context, const PJ* object);

}  // namespace sweepwright::reference
