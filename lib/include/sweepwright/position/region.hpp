// Region: a piece of ground, bounded by shortest lines between its corners.
//
// Conventions: a ring lists its corners once (the last is not a repeat of the first); outer rings
// run
//   counterclockwise seen from above, holes clockwise. The inside of an outer ring is its smaller
//   side. Edges are geodesics; a reader whose format means other edges (RFC 7946: straight in
//   longitude and latitude) adds corners until the difference is under a metre (plotting.hpp).
// Domain: anywhere, round a pole and across the antimeridian included, within kLocalPlaneReach of
// the
//   region's middle.
// Promises: P1 a Region made by make_region() has area, no ring crosses or touches itself, no two
//   rings cross, every hole lies in its outer ring.
#pragma once

#include <vector>

#include "sweepwright/position/geodesic.hpp"
#include "sweepwright/position/local_plane.hpp"

namespace sweepwright {

using Ring = std::vector<Position>;

struct Polygon {
  Ring outer;
  std::vector<Ring> holes;
  bool operator==(const Polygon&) const = default;
};

/// One or more polygons that do not overlap.
struct Region {
  std::vector<Polygon> polygons;
  bool operator==(const Region&) const = default;
};

/// Checks and tidies raw rings: drops repeated corners and closing repeats, turns rings the right
/// way round. Throws Error(geometry) naming the fault and the place: fewer than three corners, no
/// area, crossing itself, overlapping polygons, too large.
Region make_region(std::vector<Polygon> polygons);

/// Ellipsoidal area, holes taken off. Accuracy: 0.1 square metre for areas up to 1000 km across.
/// Source: Karney (2013), section 6, through GeographicLib.
Area area(const Region& region);

/// Ground that two regions share. Throws Error(geometry) when they meet and are together too large
/// for one plane.
Area common_area(const Region& a, const Region& b);

/// A place in the middle of the region's corners and edges, the same whatever corner comes first.
Position middle(const Region& region);

/// The plane round the region's middle, `axis` upwards.
LocalPlane local_plane(const Region& region, TrueDirection axis = {});

/// True inside and on the boundary (to 1 mm).
bool contains(const Region& region, Position position);

/// The corners a person would name: those left when corners within `tolerance` of the line between
/// their neighbours are dropped.
Ring main_corners(const Ring& ring, Length tolerance);

}  // namespace sweepwright
