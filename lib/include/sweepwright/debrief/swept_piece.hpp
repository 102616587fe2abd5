// SweptPiece: a straight piece of a track, and how wide the crew swept along it.
//
// Conventions: from one place to the other on the shortest line.
// Promises: P1 pieces that follow each other add up to the whole: effort is a sum.
// Source: effort as track length x sweep width [B. O. Koopman, Search and Screening, OEG Report 56
//   (1946), ch. 2].
#pragma once

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::debrief {

struct SweptPiece {
  Position from;
  Position to;
  Length sweep_width;  ///< 0 or more
};

/// Its length times its sweep width.
Area effort(const SweptPiece& piece);

}  // namespace sweepwright::debrief
