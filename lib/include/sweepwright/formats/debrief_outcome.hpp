// DebriefOutcome: all that a debrief has to show, as plain values for its writers.
//
// Conventions: what was read and what was left out is said in words, with the file in front.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sweepwright/debrief/debriefing.hpp"
#include "sweepwright/debrief/holes.hpp"
#include "sweepwright/formats/next_mission.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

struct DebriefOutcome {
  plan::Plan plan;
  debrief::Debriefing debriefing;
  /// POD under which ground of a sector counts as a hole.
  sweep::Probability hole_below;
  std::vector<std::vector<debrief::Hole>> holes;  ///< of each sector, largest first
  std::vector<std::string> logs;                  ///< what was read from each log, and dropped
  std::vector<std::string> problems;              ///< what of the crew reports was left out
  NextMission next;
  std::optional<plan::Plan> next_plan;  ///< of the next mission; none when it cannot be planned
  std::string next_refusal;             ///< why there is none
};

/// All sightings, with whose they are.
struct CrewSighting {
  std::string callsign;
  std::string sector;
  debrief::Sighting sighting;
};
std::vector<CrewSighting> sightings(const DebriefOutcome& outcome);

}  // namespace sweepwright::formats
