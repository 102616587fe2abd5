// The corners of a sector that its sheet lists and its map marks with letters; private to the
// formats room.
#pragma once

#include <string>
#include <vector>

#include "sweepwright/position/region.hpp"

namespace sweepwright::formats {

struct CornerRing {
  Ring corners;
  bool hole = false;
};

struct SectorCorners {
  Length tolerance;  ///< the sector's edge lies this near to the lines between the corners
  std::vector<CornerRing> rings;
};

/// At most kMostCorners where that can be: the tolerance is widened from kCornerTolerance until
/// they are few enough to read out.
SectorCorners sector_corners(const Region& sector);
inline constexpr Length kCornerTolerance = Length::metres(50);
inline constexpr std::size_t kMostCorners = 12;

/// A to Z, then A2, B2 ...
std::string corner_letter(std::size_t index);

}  // namespace sweepwright::formats
