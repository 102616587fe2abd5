// The key figures of a debrief as plain text, for the terminal.
#pragma once

#include <string>

#include "sweepwright/formats/debrief_outcome.hpp"

namespace sweepwright::formats {

std::string debrief_summary(const DebriefOutcome& outcome);

}  // namespace sweepwright::formats
