// divide: cuts a search area into one piece of ground for each search unit.
//
// Problem: crews differ in what they can cover. Each gets a piece in proportion, all pieces
// together
//   are the area exactly, and where the area is a rectangle so are the pieces, because straight
//   legs waste least on those.
// Method: the units are split into two groups with sums as near half as can be, the area is cut
//   straight across its longer extent so that the two parts' ellipsoidal areas are in that
//   proportion, and each part is cut again for its group. All cuts run along or across one axis.
// Conventions: the axis is `axis` at the middle of the area or, when none is given, the long side
// of
//   the smallest rectangle round it.
// Domain: any Region, concave, holed or in parts; a piece of a concave area may itself be in parts.
// Accuracy: areas in proportion to 1e-9 of the whole.
// Promises: P1 pieces do not overlap and leave no gap: their areas add up to the area's to 1e-9,
// and
//   pieces that meet share the same corners. P2 same input, same pieces. P3 pieces come in the
//   order of `shares`. (divide_test.cpp)
// Source: recursive bisection is common practice, no source.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "sweepwright/position/region.hpp"

namespace sweepwright::sector {

/// `shares`: what each unit can cover, in any one unit; all above 0. Throws Error(value) when there
/// are none or one is not above 0.
std::vector<Region> divide(const Region& area, std::span<const double> shares,
                           std::optional<TrueDirection> axis = {});

/// The direction of a piece's long side at its middle, 0 to 180 degrees.
TrueDirection long_side(const Region& region);

}  // namespace sweepwright::sector
