// Lines of equal height: where the ground stands at one height above mean sea level.
//
// Problem: a contour search flies round high ground at constant height, so its legs begin as lines
//   of equal height. They must not jump over a gap in the model.
// Conventions: each line keeps the higher ground on its left, so it runs counterclockwise round a
//   summit and clockwise round a hollow. A closed line repeats its first point at the end; an open
//   one ends at a gap or at the edge of what was asked for. A post that stands exactly at the
//   height counts as higher. Lines come in the order of their first point, from north to south,
//   then from west to east: open ones first.
// Domain: everywhere, the antimeridian included. Where several lattices lie over each other the
//   finest that knows the ground draws it; lines end where it ends.
// Accuracy: points are exact on the sides between posts for the bilinear surface, whose own lines
//   are hyperbolas: the chord departs from them by less than one step. Against gdal_contour on the
//   same grid: same crossings to 1 mm of step (isolines_test.cpp).
// Promises: P1 every point's sampled height is the height asked for; P2 no line enters a cell with
//   a missing post; P3 the ground left of each piece is higher.
// Source: marching squares; saddles as the bilinear surface has them: G. M. Nielson, B. Hamann,
//   The Asymptotic Decider, IEEE Visualization 1991 [from memory].
#pragma once

#include <vector>

#include "sweepwright/position/region.hpp"
#include "sweepwright/terrain/elevation_model.hpp"

namespace sweepwright::terrain {

struct Isoline {
  Path points;  ///< at least two
  bool closed = false;
};

/// All lines of the model at `height`.
std::vector<Isoline> isolines(const ElevationModel& model, Length height);

/// Those of the ground round a region: the smallest circle about its middle that holds it, or more.
/// Lines are not cut at the region's edge.
std::vector<Isoline> isolines(const ElevationModel& model, Length height, const Region& region);

}  // namespace sweepwright::terrain
