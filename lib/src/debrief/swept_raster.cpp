#include "debrief/swept_raster.hpp"

#include <array>
#include <bit>
#include <numbers>

namespace sweepwright::debrief {
namespace {

constexpr std::size_t kPlaces = 64;
constexpr std::uint64_t kAll = ~std::uint64_t{0};
constexpr double kHalfDiagonal = std::numbers::sqrt2 / 2;

/// A rank-1 lattice, its multiplier near the golden section of 64.
constexpr std::array<CellPoint, kPlaces> make_places() {
  std::array<CellPoint, kPlaces> places{};
  for (std::size_t i = 0; i < kPlaces; ++i) {
    places[i] = {(static_cast<double>(i * 39 % kPlaces) + 0.5) / kPlaces,
                 (static_cast<double>(i) + 0.5) / kPlaces};
  }
  return places;
}
constexpr std::array<CellPoint, kPlaces> kPlacesInCell = make_places();

std::uint64_t places_swept(const CellPiece& piece, CellPoint corner) {
  const double limit = square(piece.half_width);
  std::uint64_t swept = 0;
  for (std::size_t i = 0; i < kPlaces; ++i) {
    const CellPoint place{corner.x + kPlacesInCell[i].x, corner.y + kPlacesInCell[i].y};
    if (distance_squared(piece, place) <= limit) swept |= std::uint64_t{1} << i;
  }
  return swept;
}

/// The cells of a row that may hold some of the ground within `radius` of the piece.
IndexRange cells_met(const CellPiece& piece, double radius, double low, IndexRange all) {
  // Cells whose middle lies within the radius and half a diagonal.
  const Stretch swath = swath_at(piece, radius + kHalfDiagonal, low + 0.5);
  if (swath.empty()) return {};
  return middles_in(swath.low, swath.high, all);
}

/// The cells of a row of which all lies within `radius` of the place.
IndexRange cells_held(CellPoint place, double radius, double low, IndexRange all) {
  const Stretch bottom = disc_at(place, radius, low);
  const Stretch top = disc_at(place, radius, low + 1);
  if (bottom.empty() || top.empty()) return {};
  return middles_in(std::max(bottom.low, top.low) + 0.5, std::min(bottom.high, top.high) - 0.5,
                    all);
}

void sweep_row(const CellPiece& piece, double low, IndexRange cells, std::uint64_t* row) {
  for (std::ptrdiff_t i = cells.first; i < cells.end; ++i) {
    if (row[i] == kAll) continue;
    const CellPoint corner{static_cast<double>(i), low};
    const double off = distance_squared(piece, {corner.x + 0.5, corner.y + 0.5});
    if (piece.half_width > kHalfDiagonal && off <= square(piece.half_width - kHalfDiagonal)) {
      row[i] = kAll;
    } else {
      row[i] |= places_swept(piece, corner);
    }
  }
}

void sweep_ground(const CellPiece& piece, IndexRange rows, SweptRaster& raster) {
  const double radius = piece.half_width;
  const IndexRange all{0, raster.columns};
  const auto [bottom, top] = std::minmax(piece.from.y, piece.to.y);
  const IndexRange near =
      middles_in(bottom - radius - kHalfDiagonal, top + radius + kHalfDiagonal, rows);
  for (std::ptrdiff_t r = near.first; r < near.end; ++r) {
    const auto low = static_cast<double>(r);
    const IndexRange met = cells_met(piece, radius, low, all);
    // The piece before has swept the circle about its end.
    const IndexRange held =
        piece.joined ? cells_held(piece.from, std::min(radius, piece.half_width_before), low, all)
                     : IndexRange{};
    std::uint64_t* row = raster.swept.data() + r * raster.columns;
    if (held.first >= held.end) {
      sweep_row(piece, low, met, row);
    } else {
      sweep_row(piece, low, {met.first, std::min(held.first, met.end)}, row);
      sweep_row(piece, low, {std::max(held.end, met.first), met.end}, row);
    }
  }
}

/// The first line between cells that a coordinate meets on its way, as a share of that way, and the
/// share from one line to the next.
struct Walk {
  double next = 0;
  double step = 0;
  std::ptrdiff_t cell = 0;
  std::ptrdiff_t direction = 0;
};

Walk walk(double from, double way) {
  const double cell = std::floor(from);
  if (way == 0) return {2, 2, static_cast<std::ptrdiff_t>(cell), 0};
  const double line = way > 0 ? cell + 1 : cell;
  return {(line - from) / way, 1 / std::abs(way), static_cast<std::ptrdiff_t>(cell),
          way > 0 ? 1 : -1};
}

/// Cuts the piece at the lines between cells.
void add_effort(const CellPiece& piece, IndexRange rows, SweptRaster& raster) {
  Walk x = walk(piece.from.x, piece.to.x - piece.from.x);
  Walk y = walk(piece.from.y, piece.to.y - piece.from.y);
  const double effort = piece.length * 2 * piece.half_width;
  double at = 0;
  while (at < 1) {
    Walk& first = x.next < y.next ? x : y;
    const double next = std::min(first.next, 1.0);
    if (x.cell >= 0 && x.cell < raster.columns && y.cell >= rows.first && y.cell < rows.end) {
      raster.effort[static_cast<std::size_t>(y.cell * raster.columns + x.cell)] +=
          effort * std::max(next - at, 0.0);
    }
    at = std::max(at, next);
    first.next += first.step;
    first.cell += first.direction;
  }
}

}  // namespace

void SweptRaster::add(std::span<const CellPiece> pieces, IndexRange rows) {
  for (const CellPiece& piece : pieces) {
    const double reach = piece.half_width + kHalfDiagonal;
    if (std::max(piece.from.y, piece.to.y) + reach < static_cast<double>(rows.first) ||
        std::min(piece.from.y, piece.to.y) - reach > static_cast<double>(rows.end)) {
      continue;
    }
    sweep_ground(piece, rows, *this);
    add_effort(piece, rows, *this);
  }
}

double SweptRaster::share(std::size_t cell) const {
  return std::popcount(swept[cell]) / static_cast<double>(kPlaces);
}

}  // namespace sweepwright::debrief
