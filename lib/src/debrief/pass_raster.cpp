#include "debrief/pass_raster.hpp"

#include <array>

#include "debrief/swath_rows.hpp"

namespace sweepwright::debrief {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();
/// A slope too gentle to say where a line is met.
constexpr double kLevel = 1e-9;

double dot(CellPoint a, CellPoint b) {
  return a.x * b.x + a.y * b.y;
}

/// The number of the first cell whose middle lies at `x` or beyond, of `columns`.
std::int32_t first_cell(double x, double columns) {
  return static_cast<std::int32_t>(columns) -
         static_cast<std::int32_t>(columns - std::clamp(x - 0.5, 0.0, columns));
}
/// One more than the number of the last cell whose middle lies at `x` or before.
std::int32_t end_cell(double x, double columns) {
  return static_cast<std::int32_t>(std::clamp(x + 0.5, 0.0, columns));
}

/// Adds the cells that come into the sweep to the steps of their rows.
void count_passes(const CellPiece& piece, SwathRows& swath, std::ptrdiff_t columns,
                  std::int32_t* steps) {
  swath.lay(piece);
  const auto across = static_cast<double>(columns);
  for (std::ptrdiff_t r = swath.rows().first; r < swath.rows().end; ++r) {
    const Stretch whole = swath.whole(r);
    const Stretch held = swath.held(r);
    if (whole.empty()) continue;
    std::int32_t* row = steps + r * (columns + 1);
    ++row[first_cell(whole.low, across)];
    --row[end_cell(whole.high, across)];
    if (held.empty()) continue;
    // What the sweep already held at the beginning of the piece is no new pass.
    --row[first_cell(held.low, across)];
    ++row[end_cell(held.high, across)];
  }
}

/// x = at + slope y, seen from where the piece begins.
struct Bound {
  double at = 0;
  double slope = 0;
  double operator()(double y) const { return at + slope * y; }
};

/// Where the line at right angles to `along`, `on` further than the piece's beginning, is met;
/// nowhere when it runs nearly level.
Bound across(CellPoint along, double on, double nowhere) {
  if (std::abs(along.x) < kLevel) return {nowhere, 0};
  return {on / along.x, -along.y / along.x};
}

/// Which cells of a row a piece looks at: not further to the side than the reach, nor past the end,
/// nor before the beginning as the piece or the one before it sees it. A few cells more do no harm.
class Outlook {
 public:
  Outlook(const CellPiece& piece, double reach) {
    constexpr double kGentle = 0.5;  // a bend of less than 60 degrees: a wedge will do
    const CellPoint u = piece.along;
    const bool wedge = piece.joined && dot(u, piece.along_before) > kGentle;
    const CellPoint v = wedge ? piece.along_before : u;
    const double before = wedge ? 0 : reach;
    const double after = piece.goes_on ? 0 : reach;
    rightward_ = u.x >= 0;
    const double ahead = rightward_ ? kInfinite : -kInfinite;
    end_ = across(u, piece.length + after, ahead);
    start_ = across(u, -before, -ahead);
    start_before_ = u.x * v.x > 0 ? across(v, -before, -ahead) : Bound{-ahead, 0};
    const bool level = std::abs(u.y) < kLevel;
    side_slope_ = level ? 0 : u.x / u.y;
    side_ = level ? kInfinite : reach / std::abs(u.y);
    left_ = std::min(0.0, piece.to.x - piece.from.x) - reach;
    right_ = std::max(0.0, piece.to.x - piece.from.x) + reach;
    // The arc of the wedge stands out over its chord by less than this share of the reach.
    const double bulge = (1 - dot(u, v)) / 2;
    const double side = std::max(std::abs(u.x), std::abs(v.x)) + bulge;
    const double ends = std::max(before, after) * std::abs(u.y);
    above_ = std::min(side * reach + ends, reach);
  }

  /// How far above and below the piece it looks.
  double above() const { return above_; }

  Stretch at(double y) const {
    const double middle = side_slope_ * y;
    const double low = std::max(left_, middle - side_);
    const double high = std::min(right_, middle + side_);
    if (rightward_) {
      return {std::max(low, std::min(start_(y), start_before_(y))), std::min(high, end_(y))};
    }
    return {std::max(low, end_(y)), std::min(high, std::max(start_(y), start_before_(y)))};
  }

 private:
  bool rightward_ = true;
  Bound end_;
  Bound start_;
  Bound start_before_;
  double side_slope_ = 0;
  double side_ = 0;
  double left_ = 0;
  double right_ = 0;
  double above_ = 0;
};

void find_nearest(const CellPiece& piece, IndexRange rows, std::ptrdiff_t columns,
                  float* nearest_squared) {
  const double reach = 2 * piece.half_width;
  const Outlook outlook(piece, reach);
  const auto [low, high] = std::minmax(piece.from.y, piece.to.y);
  const IndexRange near = middles_in(low - outlook.above(), high + outlook.above(), rows);
  const auto reach_squared = static_cast<float>(square(reach));
  const auto across = static_cast<double>(columns);
  for (std::ptrdiff_t r = near.first; r < near.end; ++r) {
    const double y = static_cast<double>(r) + 0.5 - piece.from.y;
    const Stretch x = outlook.at(y);
    const std::int32_t end = end_cell(piece.from.x + x.high, across);
    float* row = nearest_squared + r * columns;
    for (std::int32_t i = first_cell(piece.from.x + x.low, across); i < end; ++i) {
      const auto found = static_cast<float>(
          distance_squared(piece, {static_cast<double>(i) + 0.5, y + piece.from.y}));
      if (found < row[i] && found <= reach_squared) row[i] = found;
    }
  }
}

}  // namespace

void PassRaster::add(std::span<const CellPiece> pieces, IndexRange rows) {
  SwathRows swath(rows);
  for (const CellPiece& piece : pieces) {
    const double reach = 2 * piece.half_width;
    if (std::max(piece.from.y, piece.to.y) + reach < static_cast<double>(rows.first) ||
        std::min(piece.from.y, piece.to.y) - reach > static_cast<double>(rows.end)) {
      continue;
    }
    count_passes(piece, swath, columns_, steps_.data());
    find_nearest(piece, rows, columns_, nearest_squared_.data());
  }
}

std::vector<std::uint32_t> PassRaster::passes() const {
  std::vector<std::uint32_t> passes(nearest_squared_.size());
  const std::int32_t* step = steps_.data();
  for (auto row = passes.begin(); row != passes.end(); row += columns_, ++step) {
    std::int32_t sum = 0;
    for (std::ptrdiff_t i = 0; i < columns_; ++i) {
      sum += *step++;
      row[i] = static_cast<std::uint32_t>(sum);
    }
  }
  return passes;
}

}  // namespace sweepwright::debrief
