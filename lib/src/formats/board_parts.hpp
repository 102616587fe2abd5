// Parts of the board that are made apart; private to the formats room.
#pragma once

#include "sweepwright/formats/board.hpp"

namespace sweepwright::formats {

/// What the checks of the plan found, worst first.
ReportTable findings_table(const plan::Plan& plan);

}  // namespace sweepwright::formats
