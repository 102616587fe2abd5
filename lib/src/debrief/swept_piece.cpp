#include "sweepwright/debrief/swept_piece.hpp"

#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::debrief {

Area effort(const SweptPiece& piece) {
  return geodesic(piece.from, piece.to).length * piece.sweep_width;
}

}  // namespace sweepwright::debrief
