// Clearance: how much air is left between a planned height and the highest ground of a corridor.
//
// Problem: one number for a whole flight hides the one ridge that matters, and ground that nobody
//   could check looks like ground that is clear. Each piece of the corridor gets a class, and what
//   was not checked has a class of its own.
// Conventions: heights above mean sea level, as the model's. Clearance is the planned height less
//   the highest ground in the corridor's piece, trees and obstacles not counted. Classes in order
//   of what a planner must look at first: below minimum, not checked, marginal, clear. Marginal is
//   less than half the minimum above the minimum (own rule).
// Domain: as corridor.hpp.
// Promises: P1 a piece that is not known is never clear or marginal; P2 below minimum exactly
//   where clearance < minimum; P3 a safe height keeps the minimum in every piece for which it is
//   given, and none is given where a piece is not known (clearance_test.cpp).
// Source: default minimum: 1,000 ft above the highest obstacle near, the value of ICAO Annex 2,
//   4.6 a) over built-up areas and of 14 CFR 91.119 b), from memory; lower rules elsewhere are
//   left to the user, who names them.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "sweepwright/terrain/corridor.hpp"

namespace sweepwright::terrain {

inline constexpr Length kMinimumClearance = Length::feet(1000);

/// Planned heights along a line: one from its start up to `to`, the next from there on.
struct HeightStep {
  Length to;
  /// None when the ground below is not known: there is no height that would be safe.
  std::optional<Length> altitude;
};
using HeightPlan = std::vector<HeightStep>;

enum class ClearanceClass { below_minimum, not_checked, marginal, clear };
/// `below minimum`, `not checked`, `marginal`, `clear`.
std::string_view name(ClearanceClass clearance);

/// A run of neighbouring pieces of one class.
struct ClearanceRun {
  ClearanceClass clearance = ClearanceClass::clear;
  std::size_t first = 0;  ///< pieces of the corridor, ends included
  std::size_t last = 0;
};

/// The least air that is left, and over what.
struct LeastClearance {
  Length clearance;
  Length altitude;    ///< planned there
  HighGround ground;  ///< that leaves so little
  std::size_t piece = 0;
};

struct Clearance {
  std::vector<ClearanceClass> pieces;  ///< one for each of the corridor
  std::vector<ClearanceRun> runs;
  std::optional<LeastClearance> least;  ///< none when nothing is known
};

/// True when a class occurs.
bool has(const Clearance& clearance, ClearanceClass wanted);

/// One height for the whole line.
HeightPlan constant_height(const Corridor& corridor, Length altitude);

/// Throws Error(value) when the steps do not rise in distance or end before the corridor, or when
/// the minimum is negative.
Clearance check_clearance(const Corridor& corridor, const HeightPlan& heights,
                          Length minimum = kMinimumClearance);

/// The lowest height that keeps the minimum over ground, rounded up to whole hundreds of feet.
Length safe_altitude(Length ground, Length minimum);

/// The safe height of the whole corridor; none when a piece is not known.
std::optional<Length> safe_altitude(const Corridor& corridor, Length minimum = kMinimumClearance);

/// A safe height for each leg of the path.
HeightPlan safe_heights_by_leg(const Corridor& corridor, Length minimum = kMinimumClearance);

/// Safe heights that follow the ground in steps of at least `shortest`; a shorter leg is one step.
/// A greater height must be reached before its step begins.
HeightPlan safe_heights_in_steps(const Corridor& corridor, Length shortest,
                                 Length minimum = kMinimumClearance);

}  // namespace sweepwright::terrain
