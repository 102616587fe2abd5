// Reads `belief` of a mission file: the scenarios; private to the formats room.
#pragma once

#include <string_view>
#include <vector>

#include "formats/mission_reader_area.hpp"
#include "sweepwright/belief/scenario.hpp"

namespace sweepwright::formats {

/// What stands in `belief`, and the files that it names.
struct BeliefField {
  std::vector<belief::Scenario> scenarios;
  std::vector<std::string> remarks;
  std::vector<plan::InputFile> inputs;
  double earlier_success = 0;  ///< of the searches that a file of cells counts
};

/// `system`: the grid of files of cells that name none.
BeliefField belief_field(const JsonCursor& cursor, const FileLoader& load, std::string_view system);

}  // namespace sweepwright::formats
