// The inverse cube law's potential on a raster; private to the debrief room.
//
// The potential at a place is W^2 / (8 pi) times the sum, over all pieces, of the integral of ds /
// r^3 along the piece, which has a closed form. The cells near a piece take it as it is. Further
// off the potential is smooth: there it is reckoned at a few places of a large square of cells (the
// further off, the larger) and put into the cells by a polynomial through those places.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "debrief/cell_piece.hpp"

namespace sweepwright::debrief {

/// The integral of ds / r^3 along a straight piece from `from` to `to`, seen from `place`: L (a +
/// b) / (a b (a b + A.B)), A and B the ways to its ends, a and b their lengths, L the piece's
/// length. Very large on the piece itself.
double inverse_cube_integral(const CellPiece& piece, CellPoint place);

class DetectionIntegral {
 public:
  DetectionIntegral(std::size_t columns, std::size_t rows);

  /// Squares of cells that can be added to at the same time.
  std::size_t tasks() const { return tasks_.size(); }
  void add(std::span<const CellPiece> pieces, std::size_t task);
  /// The potential of every cell.
  std::vector<double> potential() const;

 private:
  struct Square {
    std::size_t level = 0;
    std::size_t column = 0;
    std::size_t row = 0;
  };
  CellPoint middle(const Square& square) const;
  double half_side(const Square& square) const;
  bool is_far(const CellPiece& piece, const Square& square) const;
  bool taken_above(const CellPiece& piece, Square square) const;
  double* nodes(const Square& square);
  void add_far(const CellPiece& piece, const Square& square);
  void add_near(const CellPiece& piece, const Square& square);
  void add_below(const CellPiece& piece, const Square& square);

  std::size_t columns_;
  std::size_t rows_;
  std::size_t leaf_level_ = 0;
  std::vector<std::vector<double>> far_;  ///< for each level, the nodes of its squares
  std::vector<double> near_;              ///< for each cell
  std::vector<Square> tasks_;
};

}  // namespace sweepwright::debrief
