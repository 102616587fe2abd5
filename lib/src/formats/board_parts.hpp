// Parts of the board that are made apart; private to the formats room.
#pragma once

#include <string_view>

#include "sweepwright/formats/board.hpp"

namespace sweepwright::formats {

/// What the checks of the plan found, worst first.
BoardTable findings_table(const plan::Plan& plan);

/// The style sheet of the HTML page.
std::string_view board_style();

}  // namespace sweepwright::formats
