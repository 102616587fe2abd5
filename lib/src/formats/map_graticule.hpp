// Parallels and meridians across a map, with their labels in its margin; private to the formats
// room.
#pragma once

#include "formats/map_symbols.hpp"
#include "formats/map_view.hpp"

namespace sweepwright::formats {

struct Graticule {
  Elements lines;   ///< inside the frame
  Elements labels;  ///< in a margin of kGraticuleMargin round it
};
inline constexpr double kGraticuleMargin = 3.6;

/// Lines at a usual step of degrees or minutes, some 25 mm apart. Parallels are labelled on the
/// left and meridians below, where they get there, else on another side.
Graticule graticule(const MapView& view);

}  // namespace sweepwright::formats
