// A working as JSON: an array of lines; private to the formats room and shared by its reports.
#pragma once

#include <nlohmann/json.hpp>

#include "sweepwright/sweep/working.hpp"

namespace sweepwright::formats {

inline nlohmann::ordered_json working_json(const sweep::Working& working) {
  nlohmann::ordered_json lines = nlohmann::ordered_json::array();
  for (const sweep::WorkingLine& line : working) {
    nlohmann::ordered_json entry{{"label", line.label},
                                 {"expression", line.expression},
                                 {"value", line.value},
                                 {"source", line.source}};
    if (line.factor) entry["factor"] = *line.factor;
    lines.push_back(entry);
  }
  return lines;
}

}  // namespace sweepwright::formats
