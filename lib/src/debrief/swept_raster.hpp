// Which share of each cell was swept, and how much effort fell into it; private to the debrief
// room.
//
// Swept ground is the union of all swaths, overlaps counted once. A cell holds 64 places, one on
// each of 64 heights and one at each of 64 widths, so that an edge in any direction is met at many
// places; the share is that of the places which came into the sweep.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "debrief/cell_piece.hpp"

namespace sweepwright::debrief {

struct SweptRaster {
  std::ptrdiff_t columns = 0;
  std::vector<std::uint64_t> swept;  ///< a bit for each place
  std::vector<double> effort;        ///< track length times sweep width, in squares of a cell

  SweptRaster(std::size_t across, std::size_t cells)
      : columns(static_cast<std::ptrdiff_t>(across)), swept(cells), effort(cells) {}

  /// Adds the pieces to the given rows: calls for different rows may run at the same time.
  void add(std::span<const CellPiece> pieces, IndexRange rows);
  /// 0 to 1.
  double share(std::size_t cell) const;
};

}  // namespace sweepwright::debrief
