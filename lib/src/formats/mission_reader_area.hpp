// Reads the search area of a mission file: corners, or the name of a drawn file.
#pragma once

#include <string>
#include <vector>

#include "formats/json_cursor.hpp"
#include "sweepwright/formats/mission_reader.hpp"

namespace sweepwright::formats {

struct SearchArea {
  Region region;
  std::string name;
  std::vector<std::string> remarks;     ///< how odd things in a drawn file were read
  std::vector<plan::InputFile> inputs;  ///< the drawn file
};

SearchArea search_area(const JsonCursor& cursor, const FileLoader& load);

}  // namespace sweepwright::formats
