// Joins pieces that follow each other nearly straight; private to the debrief room.
//
// Problem: a device logs a fix each second, so a straight leg comes as hundreds of short pieces;
//   passes and nearest distances need the leg only.
// Accuracy: no place of a piece lies further than `tolerance` from the run that it went into.
#pragma once

#include <span>
#include <vector>

#include "debrief/cell_piece.hpp"

namespace sweepwright::debrief {

class StraightRuns {
 public:
  /// In cells.
  explicit StraightRuns(double tolerance) : tolerance_(tolerance) {}

  /// The runs of pieces that follow those handed in before. A run ends with the last piece.
  std::vector<CellPiece> of(std::span<const CellPiece> pieces);

 private:
  double tolerance_;
  CellPoint along_before_;  ///< of the last run
};

}  // namespace sweepwright::debrief
