// A swept piece laid on a raster; private to the debrief room.
//
// Conventions: in cells, from the raster's lower left corner: the middle of cell (column, row) is
//   (column + 0.5, row + 0.5).
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace sweepwright::debrief {

struct CellPoint {
  double x = 0;
  double y = 0;
};

struct CellPiece {
  CellPoint from;
  CellPoint to;
  CellPoint along;         ///< unit vector from `from` to `to`
  CellPoint along_before;  ///< of the piece before, when `joined`
  double length = 0;
  double half_width = 0;         ///< half the sweep width
  double half_width_before = 0;  ///< of the piece before, when `joined`
  bool joined = false;           ///< begins where the piece before ended
  bool goes_on = false;          ///< the next piece begins where this one ends
};

/// Rows or columns from `first`, up to and without `end`.
struct IndexRange {
  std::ptrdiff_t first = 0;
  std::ptrdiff_t end = 0;
};

/// A stretch along x; empty when `low` is above `high`.
struct Stretch {
  double low = 1;
  double high = -1;
  bool empty() const { return low > high; }
};

inline double square(double v) {
  return v * v;
}

/// The cells whose middle lies from `low` to `high`, as far as `within` goes. The bounds are within
/// the range of whole numbers: the frame's reach sees to that.
inline IndexRange middles_in(double low, double high, IndexRange within) {
  const double first = std::max(low - 0.5, static_cast<double>(within.first) - 1);
  const double last = std::min(high - 0.5, static_cast<double>(within.end));
  // Rounding by truncation of what is above 0; the added number is the same on both sides.
  constexpr double kAbove = 1 << 30;
  const auto up =
      static_cast<std::ptrdiff_t>(kAbove) - static_cast<std::ptrdiff_t>(kAbove - first);  // ceil
  const auto down =
      static_cast<std::ptrdiff_t>(kAbove + last) - static_cast<std::ptrdiff_t>(kAbove);  // floor
  return {std::max(up, within.first), std::min(down + 1, within.end)};
}

inline Stretch disc_at(CellPoint centre, double radius, double y) {
  const double rest = square(radius) - square(y - centre.y);
  if (rest < 0) return {};
  const double half = std::sqrt(rest);
  return {centre.x - half, centre.x + half};
}

/// Where the ground within `radius` of the piece lies on the line at height `y`.
inline Stretch swath_at(const CellPiece& piece, double radius, double y) {
  Stretch all = disc_at(piece.from, radius, y);
  const auto include = [&](double low, double high) {
    all = all.empty() ? Stretch{low, high}
                      : Stretch{std::min(all.low, low), std::max(all.high, high)};
  };
  if (const Stretch end = disc_at(piece.to, radius, y); !end.empty()) include(end.low, end.high);
  // The straight sides, where this height meets them between the piece's ends.
  for (const double side : {-radius, radius}) {
    const double rise = piece.along.y * piece.length;
    const double above = y - piece.from.y - side * piece.along.x;
    if (rise == 0 || above * rise < 0 || std::abs(above) > std::abs(rise)) continue;
    const double x = piece.from.x - side * piece.along.y + above / piece.along.y * piece.along.x;
    include(x, x);
  }
  return all;
}

/// The square of the distance from a place to the piece.
inline double distance_squared(const CellPiece& piece, CellPoint place) {
  const double x = place.x - piece.from.x;
  const double y = place.y - piece.from.y;
  const double on = std::clamp(x * piece.along.x + y * piece.along.y, 0.0, piece.length);
  return square(x - on * piece.along.x) + square(y - on * piece.along.y);
}

}  // namespace sweepwright::debrief
