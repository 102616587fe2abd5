// The theoretical optimum: where each hour of search is worth most, cell by cell.
//
// Problem: effort Z is to be spread over cells that hold the object with probability p_i and have
//   area a_i, so that the probability of success is greatest. With the exponential law of detection
//   a cell that gets effort z_i has coverage c_i = z_i / a_i and yields p_i (1 - exp(-c_i)).
// Method: at the optimum one further bit of effort is worth the same wherever there is any, and
//   less elsewhere (Karush, Kuhn and Tucker): with the density d_i = p_i / a_i there is a threshold
//   t such that
//     c_i = ln(d_i / t)  where d_i > t,   c_i = 0 elsewhere.
//   The effort that a threshold needs is a convex polygon line in ln t, so Newton's method comes to
//   the root from one side, and drops cells below the threshold for good. At each step the effort
//   still too much times the area still in play falls at least fourfold, so that some ten passes
//   do (never more than about fifty): linear time. Every 61st cell says beforehand where the
//   threshold is likely to be; cells well above and well below it are looked at only once.
// Use: no crew can fly it: it is the bar that flyable plans (assign.hpp) are compared with.
// Domain: probabilities 0 to 1 that add up to 1 at most; areas above 0; effort 0 or more. Cells
// need
//   no neighbours, shape or order. One cell may be any size: it is searched evenly.
// Accuracy: the efforts add up to Z within 1e-12 of it, the threshold condition holds within 1e-12
//   (optimal_test.cpp: on a million cells; Koopman's circular normal within 0.1 %).
// Memory: the answer's 8 bytes a cell, and 24 for each cell near the threshold: a few percent of a
//   large map, every cell of a small one.
// Promises:
//   P1 no other way to spread the effort has a greater probability of success.
//   P2 more effort never lowers coverage in any cell.
//   P3 effort_for() undoes the allocation: the effort it finds gives the wanted probability back.
//   P4 the order of the cells changes nothing but rounding.
// Source: B. O. Koopman, Search and Screening, OEG Report 56 (1946), reissued 1980, chapter 3;
//   L. D. Stone, Theory of Optimal Search (1975), chapter 2 [both from memory].
#pragma once

#include <span>
#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/belief/belief.hpp"
#include "sweepwright/sweep/detection.hpp"

namespace sweepwright::effort {

/// The cells of a belief, side by side: as many probabilities as areas.
struct Cells {
  std::span<const double> probabilities;
  std::span<const Area> areas;
};

/// Those of a belief, which must outlive them.
inline Cells cells_of(const belief::Belief& belief) {
  return {belief.probability, belief.area};
}

struct Allocation {
  std::vector<double> coverages;  ///< of each cell: effort in it / its area; 0 where none
  /// Probability in a square metre below which no effort is worth it; also what a further square
  /// metre of effort would add to the probability of success.
  double threshold_per_m2 = 0;
  sweep::Probability pos;  ///< probability of success
};

/// Throws Error(value) for numbers outside their domain, naming the cell's place in the list from
/// 1, and Error(impossible) when no cell holds any probability.
Allocation optimal_allocation(const Cells& cells, Area effort);

/// The probability of success of a coverage in each cell, by the exponential law.
sweep::Probability probability_of_success(std::span<const double> probabilities,
                                          std::span<const double> coverages);

/// The least effort that gives the wanted probability of success. Throws Error(impossible) when it
/// is not less than the probability in all cells together. Errors of the cells as above.
Area effort_for(const Cells& cells, sweep::Probability wanted);

}  // namespace sweepwright::effort
