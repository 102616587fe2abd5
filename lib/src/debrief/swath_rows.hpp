// Where the swath of a piece lies on each row of a raster; private to the debrief room.
//
// The swath is the ground within half the sweep width: two circles and what lies between them. The
// circle about a piece's end is that about the next one's beginning, and is worked out once.
#pragma once

#include <vector>

#include "debrief/cell_piece.hpp"

namespace sweepwright::debrief {

class SwathRows {
 public:
  /// `rows`: what is ever asked for.
  explicit SwathRows(IndexRange rows);

  void lay(const CellPiece& piece);
  /// The rows that the swath may meet, after lay().
  IndexRange rows() const { return rows_; }
  /// At the height of the cells' middles.
  Stretch whole(std::ptrdiff_t row) const { return whole_[index(row)]; }
  /// What the piece before had swept at its end; empty for a piece that is not joined.
  Stretch held(std::ptrdiff_t row) const {
    return held_ != nullptr && row >= held_->rows.first && row < held_->rows.end ? held_->at(row)
                                                                                 : Stretch{};
  }

 private:
  struct Circle {
    CellPoint centre;
    double radius = 0;
    IndexRange rows;
    std::vector<double> half_chords;  ///< of those rows
    Stretch at(std::ptrdiff_t row) const {
      const double half = half_chords[static_cast<std::size_t>(row - rows.first)];
      return {centre.x - half, centre.x + half};
    }
  };
  std::size_t index(std::ptrdiff_t row) const { return static_cast<std::size_t>(row - all_.first); }
  void make_circle(Circle& circle, CellPoint centre, double radius) const;
  void include(const Circle& circle);
  void include_side(const CellPiece& piece, double side);

  IndexRange all_;
  IndexRange rows_;
  const Circle* held_ = nullptr;  ///< begin_ or smaller_
  Circle smaller_;
  Circle begin_;
  Circle end_;
  std::vector<Stretch> whole_;
};

}  // namespace sweepwright::debrief
