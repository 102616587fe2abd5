// Straight cuts of a plane region in proportion; private to the sector room.
#pragma once

#include <utility>

#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::sector {

/// Which way a cut divides a region: a cut of the right extent runs up the plane.
enum class CutOf { right, up };

inline CutOf other(CutOf of) {
  return of == CutOf::right ? CutOf::up : CutOf::right;
}

Span extent(const PlaneRegion& part, CutOf of);
std::pair<PlaneRegion, PlaneRegion> split(const PlaneRegion& part, CutOf of, Length at);

/// Where to cut so that the lower side holds `low_share` of the plane's area. Quick: for weighing
/// many cuts against each other.
Length plane_cut(const PlaneRegion& part, CutOf of, double low_share);

/// Where to cut so that the lower side holds `low_share` of the ground, on the ellipsoid.
Length ground_cut(const PlaneRegion& part, CutOf of, double low_share, const LocalPlane& plane);

/// Area on the plane, holes taken off.
Area plane_area(const PlaneRegion& part);

/// Ground outside the part that a crew crosses on straight legs from one side of it to the other:
/// between its arms, over its holes, from one of its parts to the next. The legs run along `legs`.
Area crossed_outside(const PlaneRegion& part, CutOf legs);

}  // namespace sweepwright::sector
