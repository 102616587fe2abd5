// Passes and nearest distances on a raster; private to the debrief room.
//
// A pass begins where the middle of a cell comes into the sweep: within half a sweep width of the
// piece, and not already so at the end of the piece before. Of a joined piece only the crescent
// ahead of the circle about its beginning is therefore new. Passes are kept as the steps from each
// cell of a row to the next, so that a stretch of any length costs two additions.
//
// The nearest place of a track is the foot of a perpendicular or a corner: a joined piece looks
// only at what lies between the perpendiculars at its ends, and in the wedge outside the bend at
// its beginning.
#pragma once

#include <cstdint>
#include <limits>
#include <span>
#include <vector>

#include "debrief/cell_piece.hpp"

namespace sweepwright::debrief {

class PassRaster {
 public:
  PassRaster(std::size_t columns, std::size_t rows)
      : columns_(static_cast<std::ptrdiff_t>(columns)),
        steps_((columns + 1) * rows),
        nearest_squared_(columns * rows, std::numeric_limits<float>::infinity()) {}

  /// Adds the pieces to the given rows: calls for different rows may run at the same time.
  void add(std::span<const CellPiece> pieces, IndexRange rows);

  std::vector<std::uint32_t> passes() const;
  /// Squared, in cells; infinite where no piece comes within its sweep width.
  const std::vector<float>& nearest_squared() const { return nearest_squared_; }

 private:
  std::ptrdiff_t columns_;
  std::vector<std::int32_t> steps_;
  std::vector<float> nearest_squared_;
};

}  // namespace sweepwright::debrief
