// Lines beside a route: where a crew flies that keeps one distance from it.
//
// Problem: a line beside a route of many legs must join at the bends without crossing itself and
//   without a gap. On the outside of a bend its legs are lengthened until they meet; a bend of more
//   than 90 degrees gets two corners, so that none lies farther than 1.42 offsets from the bend. On
//   the inside they end where they meet, and what would lie nearer to another part of the route
//   than the offset is left out.
// Conventions: a positive offset is to the right of the route.
// Domain: routes of 2 to kMostRoutePoints places within kLocalPlaneReach of their middle that do
//   not cross themselves or turn back on themselves; a route may end where it begins.
// Accuracy: 0.1 % of the offset for route legs up to 300 NM and offsets up to 30 NM
//   (route_test.cpp).
// Promises: P1 no point of the line lies nearer to the route than the offset, to the accuracy;
//   P2 the line does not cross itself.
// Source: worked out here; mitred joins are common practice.
#pragma once

#include <vector>

#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::pattern {

inline constexpr std::size_t kMostRoutePoints = 1000;

/// The route without repeated places. Throws Error(geometry) when it is outside the domain, with
/// the place where it crosses or turns back on itself.
Path checked_route(const Path& route);

/// The line at that offset, in pieces, in the order of the route: more than one where the route
/// comes back too near to itself; none where no line can keep that distance.
std::vector<Path> line_beside(const Path& checked_route, Length offset);

/// The largest turn of the route at one of its places, 0 to 180 degrees.
Angle sharpest_bend(const Path& checked_route);

}  // namespace sweepwright::pattern
