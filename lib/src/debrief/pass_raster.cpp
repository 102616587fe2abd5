#include "debrief/pass_raster.hpp"

namespace sweepwright::debrief {
namespace {

IndexRange rows_about(double low, double high, double reach, IndexRange rows) {
  return middles_in(low - reach, high + reach, rows);
}

void count(std::uint32_t* row, IndexRange cells) {
  for (std::ptrdiff_t i = cells.first; i < cells.end; ++i) ++row[i];
}

void count_passes(const CellPiece& piece, IndexRange rows, PassRaster& raster) {
  const double radius = piece.half_width;
  const auto [low, high] = std::minmax(piece.from.y, piece.to.y);
  const IndexRange all{0, raster.columns};
  const IndexRange near = rows_about(low, high, radius, rows);
  for (std::ptrdiff_t r = near.first; r < near.end; ++r) {
    const double y = static_cast<double>(r) + 0.5;
    const Stretch swath = swath_at(piece, radius, y);
    if (swath.empty()) continue;
    std::uint32_t* row = raster.passes.data() + r * raster.columns;
    const IndexRange cells = middles_in(swath.low, swath.high, all);
    // What the sweep already held at the beginning of the piece is no new pass.
    const Stretch held = piece.joined
                             ? disc_at(piece.from, std::min(radius, piece.half_width_before), y)
                             : Stretch{};
    if (held.empty()) {
      count(row, cells);
      continue;
    }
    const IndexRange old = middles_in(held.low, held.high, all);
    count(row, {cells.first, std::min(old.first, cells.end)});
    count(row, {std::max({old.end, old.first, cells.first}), cells.end});
  }
}

/// Keeps of `stretch` where a x + b >= 0.
void keep_where(double a, double b, Stretch& stretch) {
  constexpr double kLevel = 1e-9;  // too little of a slope to say where
  if (a > kLevel) {
    stretch.low = std::max(stretch.low, -b / a);
  } else if (a < -kLevel) {
    stretch.high = std::min(stretch.high, -b / a);
  }
}

double dot(CellPoint a, CellPoint b) {
  return a.x * b.x + a.y * b.y;
}

/// How far beyond the perpendiculars at its ends a piece looks, and along which directions.
struct Slack {
  bool wedge = false;  ///< the bend at the beginning is gentle: a wedge will do
  double before = 0;
  double after = 0;
};

Slack slack(const CellPiece& piece, double reach) {
  constexpr double kGentle = 0.5;  // a bend of less than 60 degrees
  const bool wedge = piece.joined && dot(piece.along, piece.along_before) > kGentle;
  return {wedge, wedge ? 0 : reach, piece.goes_on ? 0 : reach};
}

void find_nearest(const CellPiece& piece, IndexRange rows, PassRaster& raster) {
  const double reach = 2 * piece.half_width;
  const Slack beyond = slack(piece, reach);
  const CellPoint u = piece.along;
  const CellPoint v = beyond.wedge ? piece.along_before : u;
  // The arc of the wedge stands out over its chord by less than this share of the reach.
  const double bulge = (1 - dot(u, v)) / 2;
  const double side = std::max(std::abs(u.x), std::abs(v.x)) + bulge;
  const double ends = std::max(beyond.before, beyond.after) * std::abs(u.y);
  const auto [low, high] = std::minmax(piece.from.y, piece.to.y);
  const IndexRange near = rows_about(low, high, std::min(side * reach + ends, reach), rows);
  const auto reach_squared = static_cast<float>(square(reach));
  const auto [left, right] = std::minmax(piece.from.x, piece.to.x);
  for (std::ptrdiff_t r = near.first; r < near.end; ++r) {
    const double y = static_cast<double>(r) + 0.5 - piece.from.y;
    Stretch x{left - reach - piece.from.x, right + reach - piece.from.x};
    // Not further than the reach to the side, nor past the end, nor before the beginning as the
    // piece or the one before it sees it: looking at a few cells more does no harm.
    keep_where(u.y, reach - u.x * y, x);
    keep_where(-u.y, reach + u.x * y, x);
    keep_where(-u.x, piece.length + beyond.after - u.y * y, x);
    if (u.x * v.x > 0) {
      Stretch other = x;
      keep_where(u.x, beyond.before + u.y * y, x);
      keep_where(v.x, beyond.before + v.y * y, other);
      x = {std::min(x.low, other.low), std::max(x.high, other.high)};
    }
    const IndexRange cells =
        middles_in(piece.from.x + x.low, piece.from.x + x.high, {0, raster.columns});
    float* row = raster.nearest_squared.data() + r * raster.columns;
    for (std::ptrdiff_t i = cells.first; i < cells.end; ++i) {
      const auto found = static_cast<float>(
          distance_squared(piece, {static_cast<double>(i) + 0.5, static_cast<double>(r) + 0.5}));
      if (found < row[i] && found <= reach_squared) row[i] = found;
    }
  }
}

}  // namespace

void PassRaster::add(std::span<const CellPiece> pieces, IndexRange rows) {
  for (const CellPiece& piece : pieces) {
    const double reach = 2 * piece.half_width;
    if (std::max(piece.from.y, piece.to.y) + reach < static_cast<double>(rows.first) ||
        std::min(piece.from.y, piece.to.y) - reach > static_cast<double>(rows.end)) {
      continue;
    }
    count_passes(piece, rows, *this);
    find_nearest(piece, rows, *this);
  }
}

}  // namespace sweepwright::debrief
