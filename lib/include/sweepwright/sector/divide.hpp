// divide: cuts a search area into one piece of ground for each search unit.
//
// Problem: crews differ in what they can cover. Each gets a piece in proportion, all pieces
//   together are the area exactly, and no crew should fly across gaps in its piece.
// Method: the units are split into two groups, the area is cut straight so that the two parts'
//   ellipsoidal areas are in the groups' proportion, and each part is cut again for its group. All
//   cuts run along or across one axis. A convex part is cut across its longer extent into halves as
//   near as can be; for others a beam search chooses the cuts (docs/methods/sectors.md).
// Conventions: the axis is `axis` at the middle of the area or, when none is given, the long side
//   of the smallest rectangle round it.
// Domain: any Region, concave, holed or in parts.
// Accuracy: areas in proportion to 1e-8 of the whole.
// Promises: P1 pieces do not overlap and leave no gap: their areas add up to the area's to 1e-9,
//   and pieces that meet share the same corners. P2 same input, same pieces. P3 pieces come in the
//   order of `shares`. P4 for two units: both pieces are in one part when a straight cut along or
//   across the axis allows it. (divide_test.cpp, ugly_shapes_test.cpp)
// Source: recursive bisection and beam search are common practice, no source; the measure of a good
//   division is our own.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "sweepwright/position/region.hpp"

namespace sweepwright::sector {

/// `shares`: what each unit can cover, in any one unit of measure. Throws Error(value) when there
/// are none, one is not above 0, or one is less than a millionth of their sum.
std::vector<Region> divide(const Region& area, std::span<const double> shares,
                           std::optional<TrueDirection> axis = {});

/// The direction of a piece's long side at its middle, 0 to 180 degrees.
TrueDirection long_side(const Region& region);

}  // namespace sweepwright::sector
