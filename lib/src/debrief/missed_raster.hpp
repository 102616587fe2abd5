// MissedRaster: the chance, cell by cell, that an object there would have been missed so far;
// private to the debrief room.
#pragma once

#include <vector>

#include "sweepwright/debrief/coverage_map.hpp"
#include "sweepwright/sweep/detection.hpp"

namespace sweepwright::debrief {

/// The probability of detection of each cell of a map. The exponential law spreads effort over
/// squares `window` wide.
std::vector<float> raster_pod(const CoverageMap& map, sweep::DetectionLaw law, Length window);

/// The mean over square windows round each cell, as wide as an odd number of cells can be nearest
/// to `window`; beyond the raster the values are 0.
std::vector<double> windowed_mean(const std::vector<double>& values, const CoverageFrame& frame,
                                  Length window);

}  // namespace sweepwright::debrief
