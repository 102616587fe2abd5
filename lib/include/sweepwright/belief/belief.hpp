// Belief: where the object can be, as a probability of containment for each cell of a grid.
//
// Problem: a planner believes more in some ground than in other ground. The belief says how much,
//   cell by cell, and never loses what lies outside the cells.
// Conventions: `probability[i]` and `area[i]` belong to `cells[i]`. Plain spans of probability and
//   area are all that updates (update.hpp) and the division of effort need; names and ground stay
//   behind. Probabilities lie in 0 to 1.
// Domain: any cells that do not overlap, of any grid, or drawn by hand.
// Promises: P1 the probabilities of a belief made here, and `outside`, sum to 1 within 1e-12
//   (belief_test.cpp).
// Source: probability of containment: IAMSAR Manual Volume II, chapter 4 [from memory].
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/grid/cell.hpp"

namespace sweepwright::belief {

struct Belief {
  std::vector<grid::Cell> cells;
  std::vector<double> probability;  ///< of containment, one for each cell
  std::vector<Area> area;           ///< on the ellipsoid, one for each cell
  double outside = 0;               ///< the probability that the object is in none of the cells
  /// The probability that the searches so far would have found the object (cumulative POS).
  double cumulative_success = 0;
};

/// How far a sum of stated probabilities may be from 1: they are written with few digits.
inline constexpr double kSumTolerance = 1e-6;

/// The belief of stated cell probabilities; `outside` is what they leave of 1. Sums up to
/// kSumTolerance over 1 are scaled down to 1. Throws Error(value) for a probability that is not
/// from 0 to 1, a sum above 1, a sum of 0, or lists of different lengths.
Belief make_belief(std::vector<grid::Cell> cells, std::vector<double> probability);

/// The same with a stated `outside`: cells and outside must sum to 1 within kSumTolerance, and are
/// scaled to 1.
Belief make_belief(std::vector<grid::Cell> cells, std::vector<double> probability, double outside);

}  // namespace sweepwright::belief
