// The factors that correct a table's sweep width. Each gives one line of the working, its factor
// set; a factor of 1 is shown too, with the reason.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/sweep/sweep_width.hpp"

namespace sweepwright::sweep {

struct Correction {
  WorkingLine line;
  bool from_memory = false;
  std::string caution = {};  ///< when something had to be taken for granted
};

/// Over water. `object` is the table's name of the search object.
Correction weather_correction(const Request& request, const std::string& object,
                              const Tables& tables);
/// Over water, for aircraft.
Correction speed_correction(const Request& request, const std::string& object,
                            const SpeedTable& table);
/// Over land.
Correction terrain_correction(const Request& request, const std::string& object,
                              const TerrainTable& table);
Correction fatigue_correction(bool fatigued);

}  // namespace sweepwright::sweep
