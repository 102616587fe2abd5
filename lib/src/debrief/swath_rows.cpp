#include "debrief/swath_rows.hpp"

#include <limits>
#include <utility>

namespace sweepwright::debrief {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

}  // namespace

SwathRows::SwathRows(IndexRange rows)
    : all_(rows), whole_(static_cast<std::size_t>(rows.end - rows.first)) {}

void SwathRows::make_circle(Circle& circle, CellPoint centre, double radius) const {
  circle.centre = centre;
  circle.radius = radius;
  circle.rows = middles_in(centre.y - radius, centre.y + radius, all_);
  const auto count = std::max<std::ptrdiff_t>(circle.rows.end - circle.rows.first, 0);
  circle.half_chords.resize(static_cast<std::size_t>(count));
  const double first = static_cast<double>(circle.rows.first) + 0.5 - centre.y;
  for (std::size_t i = 0; i < circle.half_chords.size(); ++i) {
    const double off = first + static_cast<double>(i);
    circle.half_chords[i] = std::sqrt(std::max(square(radius) - square(off), 0.0));
  }
}

void SwathRows::include(const Circle& circle) {
  for (std::ptrdiff_t row = circle.rows.first; row < circle.rows.end; ++row) {
    const Stretch chord = circle.at(row);
    Stretch& whole = whole_[index(row)];
    whole = {std::min(whole.low, chord.low), std::max(whole.high, chord.high)};
  }
}

/// The straight side of the swath `side` to the left of the piece.
void SwathRows::include_side(const CellPiece& piece, double side) {
  const double x = piece.from.x - side * piece.along.y;
  const double y = piece.from.y + side * piece.along.x;
  const double rise = piece.length * piece.along.y;
  if (rise == 0) return;  // level: the circles reach as high
  const IndexRange met = middles_in(std::min(y, y + rise), std::max(y, y + rise), all_);
  const double slope = piece.along.x / piece.along.y;
  for (std::ptrdiff_t row = met.first; row < met.end; ++row) {
    const double at = x + slope * (static_cast<double>(row) + 0.5 - y);
    Stretch& whole = whole_[index(row)];
    whole = {std::min(whole.low, at), std::max(whole.high, at)};
  }
}

void SwathRows::lay(const CellPiece& piece) {
  const double radius = piece.half_width;
  const bool known =
      end_.centre.x == piece.from.x && end_.centre.y == piece.from.y && end_.radius == radius;
  if (known) {
    std::swap(begin_, end_);
  } else {
    make_circle(begin_, piece.from, radius);
  }
  make_circle(end_, piece.to, radius);
  if (!piece.joined) {
    held_ = nullptr;
  } else if (piece.half_width_before < radius) {
    make_circle(smaller_, piece.from, piece.half_width_before);
    held_ = &smaller_;
  } else {
    held_ = &begin_;
  }
  const auto [low, high] = std::minmax(piece.from.y, piece.to.y);
  rows_ = middles_in(low - radius, high + radius, all_);
  for (std::ptrdiff_t row = rows_.first; row < rows_.end; ++row) {
    whole_[index(row)] = {kInfinite, -kInfinite};
  }
  include(begin_);
  include(end_);
  include_side(piece, radius);
  include_side(piece, -radius);
}

}  // namespace sweepwright::debrief
