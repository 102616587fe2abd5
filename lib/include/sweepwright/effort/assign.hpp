// Who searches which rectangle: a flyable plan for a map of belief.
//
// Problem: the theoretical optimum (optimal.hpp) sends effort into every cell by itself; no crew
// can
//   fly that. Crews fly rectangles, one each, at one spacing. Which rectangles find most?
// Method: the map is laid out on a plane, legs along an axis or across it. Three first layouts are
//   made: all units together in the best single rectangle, divided in proportion to effort; the
//   ground and the units split in two as long as that promises more; and each unit, the strongest
//   first, where it finds most beside the others. Each is improved by moving edges (a neighbour
//   gives way), rectangles and crews as long as more is found, in steps that halve. The best is
//   kept. It is not proved the best of all: `ratio` says how near the bound it comes.
// Conventions: a unit searches its rectangle evenly: coverage = effort / area, spacing = sweep
// width
//   / coverage, legs along the longer side. Where that spacing would be under its least spacing, it
//   flies the least spacing and has time left. Detection by the exponential law, the cautious one.
// Domain: ground within kLocalPlaneReach of its middle; 1 to kMostUnits units.
// Accuracy: POC by the share of each cell's ground that lies in the rectangle, each cell being
//   evenly likely all over; 1e-4 of the value (assign_test.cpp, beside the closed form).
// Promises:
//   P1 the bound is never passed: pos <= bound.
//   P2 not worse than the best single rectangle of all units together, when that can be flown.
//   P3 rectangles do not overlap; each meets its unit's limits.
//   P4 units that are equal may be named in any order: the rectangles are the same.
//   P5 same input, same plan.
// Source: the bound: Stone, Theory of Optimal Search (1975), chapter 2 [from memory]. Uniform
//   rectangles in proportion to effort: IAMSAR Manual Volume II, chapter 4 [from memory]. The
//   search for a layout is our own.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "sweepwright/belief/belief.hpp"
#include "sweepwright/effort/available.hpp"
#include "sweepwright/position/region.hpp"
#include "sweepwright/sweep/detection.hpp"

namespace sweepwright::effort {

inline constexpr std::size_t kMostUnits = 60;

/// Ground that holds the object with some probability, evenly spread over it: a cell of a belief.
struct ProbableGround {
  Region ground;
  double probability = 0;
};

/// The cells of a belief that hold any probability.
std::vector<ProbableGround> ground_of(const belief::Belief& belief);

/// What makes a rectangle flyable. Zero where there is no limit.
struct FlyingLimits {
  Length least_leg;      ///< shorter legs are all turns
  Length least_spacing;  ///< the turn's diameter, say
  Length least_width;    ///< of a rectangle
};

struct Searcher {
  Unit unit;
  FlyingLimits limits;
};

/// What one unit searches.
struct Assignment {
  Region region;
  Area area;               ///< of the region
  Area effort;             ///< spent in it
  Duration search_time{};  ///< used; less than the unit has where the least spacing rules
  sweep::Coverage coverage;
  Length spacing;
  Length leg;                   ///< the longer side, along which the legs lie
  TrueDirection leg_direction;  ///< at the middle, 0 to 180 degrees
  sweep::Probability poc;
  sweep::Probability pod;
  sweep::Probability pos;
};

struct FlyablePlan {
  std::vector<Assignment> assignments;  ///< in the order of the units
  sweep::Probability pos;
  sweep::Probability bound;  ///< of the theoretical optimum with the same total effort
  double ratio = 0;          ///< pos / bound
  TrueDirection axis;        ///< along which, or across which, all legs lie
};

/// `axis`: direction of the legs, or across it; none: the better of the belief's long axis and
/// north. Throws Error(value) for numbers outside their domain, Error(impossible) when no layout
/// meets the limits, Error(geometry) for ground too far apart.
FlyablePlan assign(std::span<const ProbableGround> belief, std::span<const Searcher> searchers,
                   std::optional<TrueDirection> axis = {});

}  // namespace sweepwright::effort
