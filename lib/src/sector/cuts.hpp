// Which cuts to make: one after the other until each unit has its own ground; private to the sector
// room.
//
// Problem: on a convex area any straight cut will do. On a bay, a ridge or a lake with an island
//   most cuts leave a crew with ground in two parts, or with legs that run off it and on again.
// Method: a beam search. Of a handful of half-made divisions, each is cut once more in every way
//   that is open to it, and the best handful is kept. Best: fewest parts; then least ground crossed
//   outside of the sectors on straight legs, and sectors near a square.
// Source: beam search is common practice; the measure of a good division is our own.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "sector/cut.hpp"

namespace sweepwright::sector {

/// Ground for a run of units that stand next to each other in the list.
struct Group {
  PlaneRegion ground;
  std::size_t first_unit = 0;
  std::size_t units = 0;
};

/// In the order of the units.
using Division = std::vector<Group>;

/// Cuts the first group of more than one unit.
struct Cut {
  CutOf of = CutOf::right;
  std::size_t first_units = 1;  ///< how many of the group's units, from its first, go together
  bool first_is_low = true;     ///< they get the lower (left) side
};

/// The most divisions worth trying at full accuracy.
inline constexpr std::size_t kMostChoices = 4;

/// Lists of cuts that divide the area, best first. `legs_up`: the planner wants the legs along the
/// plane's axis; else they lie along each sector's longer extent.
std::vector<std::vector<Cut>> choose_cuts(const PlaneRegion& area, std::span<const double> shares,
                                          bool legs_up);

/// Makes the cuts, each exact on the ellipsoid.
Division make_cuts(const PlaneRegion& area, std::span<const double> shares,
                   std::span<const Cut> cuts, const LocalPlane& plane);

/// What is bad about a division: less is better.
struct Fault {
  std::size_t parts_too_many = 0;
  double shape = 0;  ///< ground crossed outside, and awkward shapes, as a share of the area
};
bool operator<(const Fault& a, const Fault& b);

/// `whole`: the area on the plane.
Fault fault(const Division& division, Area whole, bool legs_up);

}  // namespace sweepwright::sector
