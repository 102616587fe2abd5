// Passes and nearest distances on a raster; private to the debrief room.
//
// A pass begins where the middle of a cell comes into the sweep: within half a sweep width of the
// piece, and not already so at the end of the piece before. Of a joined piece only the crescent
// ahead of the circle about its beginning is therefore looked at. The nearest place of a track is
// the foot of a perpendicular or a corner: a joined piece looks only at what lies between the
// perpendiculars at its ends, and in the wedge outside the bend at its beginning.
#pragma once

#include <cstdint>
#include <limits>
#include <span>
#include <vector>

#include "debrief/cell_piece.hpp"

namespace sweepwright::debrief {

struct PassRaster {
  std::ptrdiff_t columns = 0;
  std::vector<std::uint32_t> passes;
  /// Squared, in cells; infinite where no piece comes within its sweep width.
  std::vector<float> nearest_squared;

  PassRaster(std::size_t across, std::size_t cells)
      : columns(static_cast<std::ptrdiff_t>(across)),
        passes(cells),
        nearest_squared(cells, std::numeric_limits<float>::infinity()) {}

  /// Adds the pieces to the given rows: calls for different rows may run at the same time.
  void add(std::span<const CellPiece> pieces, IndexRange rows);
};

}  // namespace sweepwright::debrief
