#include "debrief/detection_integral.hpp"

#include <array>
#include <limits>
#include <numbers>

namespace sweepwright::debrief {
namespace {

constexpr std::size_t kLeafCells = 8;  // along the side of the smallest square
constexpr std::size_t kNodes = 6;      // along the side of a square
constexpr std::size_t kAllNodes = kNodes * kNodes;
/// A piece is far from a square when it keeps this many half sides from its middle.
constexpr double kFar = 3.5;
/// A piece longer than this many half sides, seen from so far, needs the digits of a double.
constexpr double kLongPiece = 20;
/// Squares of this level are added to apart from each other.
constexpr std::size_t kTaskLevel = 2;

using Weights = std::array<double, kNodes>;

/// Chebyshev points of -1 to 1.
Weights make_node_places() {
  Weights places{};
  for (std::size_t i = 0; i < kNodes; ++i) {
    places[i] = -std::cos((2 * static_cast<double>(i) + 1) * std::numbers::pi / (2 * kNodes));
  }
  return places;
}
const Weights kNodePlaces = make_node_places();

/// Lagrange's weights of the nodes at a place of -1 to 1.
Weights weights_at(double place) {
  Weights weights{};
  for (std::size_t i = 0; i < kNodes; ++i) {
    weights[i] = 1;
    for (std::size_t j = 0; j < kNodes; ++j) {
      if (j != i) weights[i] *= (place - kNodePlaces[j]) / (kNodePlaces[i] - kNodePlaces[j]);
    }
  }
  return weights;
}

double interpolated(const double* nodes, const Weights& across, const Weights& up) {
  double sum = 0;
  for (std::size_t j = 0; j < kNodes; ++j) {
    double row = 0;
    for (std::size_t i = 0; i < kNodes; ++i) row += across[i] * nodes[j * kNodes + i];
    sum += up[j] * row;
  }
  return sum;
}

/// Adds the potential at the nodes of a square of -1 to 1 to those of one of its quarters.
void hand_down(const double* from, double* to, std::size_t right, std::size_t upper) {
  std::array<Weights, kNodes> across{};
  std::array<Weights, kNodes> up{};
  for (std::size_t i = 0; i < kNodes; ++i) {
    across[i] = weights_at((kNodePlaces[i] + (right != 0 ? 1 : -1)) / 2);
    up[i] = weights_at((kNodePlaces[i] + (upper != 0 ? 1 : -1)) / 2);
  }
  for (std::size_t j = 0; j < kNodes; ++j) {
    for (std::size_t i = 0; i < kNodes; ++i) {
      to[j * kNodes + i] += interpolated(from, across[i], up[j]);
    }
  }
}

/// The integral from the ways to the piece's ends. The sum of a b and A.B is 0 on the piece: there
/// rounding is kept from making it less than it can be.
template <typename Number>
Number integral(Number length, Number ax, Number ay, Number bx, Number by) {
  const Number a = std::sqrt(ax * ax + ay * ay);
  const Number b = std::sqrt(bx * bx + by * by);
  const Number product = a * b;
  constexpr Number kRounding = std::numeric_limits<Number>::epsilon();
  const Number sum = std::max(product + (ax * bx + ay * by), kRounding * product);
  return length * (a + b) / (product * sum);
}

double strength(const CellPiece& piece) {
  return square(2 * piece.half_width) / (8 * std::numbers::pi);
}

template <typename Number>
void add_to_nodes(const CellPiece& piece, CellPoint centre, double half, double* nodes) {
  const auto number = [](double value) { return static_cast<Number>(value); };
  const Number from_x = number(piece.from.x - centre.x);
  const Number from_y = number(piece.from.y - centre.y);
  const Number to_x = number(piece.to.x - centre.x);
  const Number to_y = number(piece.to.y - centre.y);
  const Number length = number(piece.length);
  std::array<Number, kAllNodes> x{};
  std::array<Number, kAllNodes> y{};
  for (std::size_t i = 0; i < kAllNodes; ++i) {
    x[i] = number(half * kNodePlaces[i % kNodes]);
    y[i] = number(half * kNodePlaces[i / kNodes]);
  }
  std::array<Number, kAllNodes> found{};
  for (std::size_t i = 0; i < kAllNodes; ++i) {
    found[i] = integral(length, from_x - x[i], from_y - y[i], to_x - x[i], to_y - y[i]);
  }
  const double factor = strength(piece);
  for (std::size_t i = 0; i < kAllNodes; ++i) nodes[i] += factor * static_cast<double>(found[i]);
}

}  // namespace

double inverse_cube_integral(const CellPiece& piece, CellPoint place) {
  return integral(piece.length, piece.from.x - place.x, piece.from.y - place.y,
                  piece.to.x - place.x, piece.to.y - place.y);
}

DetectionIntegral::DetectionIntegral(std::size_t columns, std::size_t rows)
    : columns_(columns), rows_(rows), near_(columns * rows) {
  while ((kLeafCells << leaf_level_) < std::max(columns, rows)) ++leaf_level_;
  for (std::size_t level = 0; level <= leaf_level_; ++level) {
    far_.emplace_back((std::size_t{1} << (2 * level)) * kAllNodes);
    if (level > kTaskLevel) continue;
    const std::size_t across = std::size_t{1} << level;
    const std::size_t side = kLeafCells << (leaf_level_ - level);
    for (std::size_t row = 0; row < across && row * side < rows; ++row) {
      for (std::size_t column = 0; column < across && column * side < columns; ++column) {
        tasks_.push_back({level, column, row});
      }
    }
  }
}

double DetectionIntegral::half_side(const Square& square) const {
  return static_cast<double>(kLeafCells << (leaf_level_ - square.level)) / 2;
}

CellPoint DetectionIntegral::middle(const Square& square) const {
  const double half = half_side(square);
  return {half * (2 * static_cast<double>(square.column) + 1),
          half * (2 * static_cast<double>(square.row) + 1)};
}

bool DetectionIntegral::is_far(const CellPiece& piece, const Square& at) const {
  return distance_squared(piece, middle(at)) >= square(kFar * half_side(at));
}

bool DetectionIntegral::taken_above(const CellPiece& piece, Square at) const {
  while (at.level > 0) {
    at = {at.level - 1, at.column / 2, at.row / 2};
    if (is_far(piece, at)) return true;
  }
  return false;
}

double* DetectionIntegral::nodes(const Square& at) {
  return far_[at.level].data() + ((at.row << at.level) + at.column) * kAllNodes;
}

void DetectionIntegral::add_far(const CellPiece& piece, const Square& at) {
  const double half = half_side(at);
  const CellPoint centre = middle(at);
  if (piece.length <= kLongPiece * half) {
    add_to_nodes<float>(piece, centre, half, nodes(at));
  } else {
    add_to_nodes<double>(piece, centre, half, nodes(at));
  }
}

void DetectionIntegral::add_near(const CellPiece& piece, const Square& at) {
  const double factor = strength(piece);
  const std::size_t left = at.column * kLeafCells;
  const std::size_t right = std::min(left + kLeafCells, columns_);
  const std::size_t low = at.row * kLeafCells;
  for (std::size_t row = low; row < std::min(low + kLeafCells, rows_); ++row) {
    double* cells = near_.data() + row * columns_;
    const double y = static_cast<double>(row) + 0.5;
    for (std::size_t column = left; column < right; ++column) {
      cells[column] +=
          factor * inverse_cube_integral(piece, {static_cast<double>(column) + 0.5, y});
    }
  }
}

void DetectionIntegral::add_below(const CellPiece& piece, const Square& at) {
  const std::size_t side = kLeafCells << (leaf_level_ - at.level);
  if (at.column * side >= columns_ || at.row * side >= rows_) return;
  if (is_far(piece, at)) return add_far(piece, at);
  if (at.level == leaf_level_) return add_near(piece, at);
  for (std::size_t quarter = 0; quarter < 4; ++quarter) {
    add_below(piece, {at.level + 1, 2 * at.column + quarter % 2, 2 * at.row + quarter / 2});
  }
}

void DetectionIntegral::add(std::span<const CellPiece> pieces, std::size_t task) {
  const Square& at = tasks_[task];
  const bool alone = at.level < std::min(kTaskLevel, leaf_level_);
  for (const CellPiece& piece : pieces) {
    if (taken_above(piece, at)) continue;
    if (!alone) {
      add_below(piece, at);
    } else if (is_far(piece, at)) {
      add_far(piece, at);
    }
  }
}

std::vector<double> DetectionIntegral::potential() const {
  std::vector<double> at = far_.front();
  for (std::size_t level = 0; level < leaf_level_; ++level) {
    std::vector<double> below = far_[level + 1];
    const std::size_t across = std::size_t{2} << level;
    for (std::size_t row = 0; row < across; ++row) {
      for (std::size_t column = 0; column < across; ++column) {
        hand_down(at.data() + (((row / 2) << level) + column / 2) * kAllNodes,
                  below.data() + (row * across + column) * kAllNodes, column % 2, row % 2);
      }
    }
    at = std::move(below);
  }
  std::array<Weights, kLeafCells> weights{};
  for (std::size_t i = 0; i < kLeafCells; ++i) {
    weights[i] = weights_at((2 * static_cast<double>(i) + 1) / kLeafCells - 1);
  }
  std::vector<double> potential = near_;
  for (std::size_t row = 0; row < rows_; ++row) {
    for (std::size_t column = 0; column < columns_; ++column) {
      const std::size_t square = ((row / kLeafCells) << leaf_level_) + column / kLeafCells;
      potential[row * columns_ + column] += interpolated(
          at.data() + square * kAllNodes, weights[column % kLeafCells], weights[row % kLeafCells]);
    }
  }
  return potential;
}

}  // namespace sweepwright::debrief
