// Reads `belief` of a mission file: the scenarios; private to the formats room.
#pragma once

#include <vector>

#include "formats/mission_reader_area.hpp"
#include "sweepwright/belief/scenario.hpp"

namespace sweepwright::formats {

/// What stands in `belief`, and the files that it names.
struct BeliefField {
  std::vector<belief::Scenario> scenarios;
  std::vector<std::string> remarks;
  std::vector<plan::InputFile> inputs;
};

BeliefField belief_field(const JsonCursor& cursor, const FileLoader& load);

}  // namespace sweepwright::formats
