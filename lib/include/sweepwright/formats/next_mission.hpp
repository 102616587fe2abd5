// The mission file of the next period: the planner's own file, with the belief after the search.
//
// Problem: after a search in vain the next one is planned from what is believed now. All else that
//   the planner wrote stands: units, channels, hazards, and the file's own order and indents.
// Conventions: what is changed:
//   - `belief` is the file of cells that the debrief wrote;
//   - `search_area` is left out, so that each unit searches where the belief is worth most;
//   - the operational period begins so many whole days later that the old one is over, at the same
//     hours; units' times of departure move with it;
//   - the day letter is the next one;
//   - files that the mission names are looked for from the new file's place.
//   Conditions stand as they were: the planner puts in the new forecast.
// Promises: P1 plan takes the file as it is; P2 bytes of members that are not named above are kept
//   (next_mission_test.cpp).
// Source: own work.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/plan/mission.hpp"

namespace sweepwright::formats {

struct NextMission {
  std::string text;
  std::vector<std::string> changes;  ///< in words, for the planner
};

/// `text`: the mission file that `mission` was read from. `belief_file`: beside the new file.
/// `folder`: the way from the new file to the mission's own folder, `../../` or empty.
NextMission next_mission(std::string_view text, const plan::Mission& mission,
                         std::string_view belief_file, std::string_view folder);

/// `A` to `B`, `Z` to `AA`, `ZZ` to `A`.
std::string next_day_letter(std::string_view letter);

}  // namespace sweepwright::formats
