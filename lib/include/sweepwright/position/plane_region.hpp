// PlaneRegion: a Region laid out on a LocalPlane, where it can be cut and measured with a ruler.
//
// Conventions: as in region.hpp; rings are not closed. `right` and `up` are those of the plane.
// Accuracy: see local_plane.hpp; a cut adds no error of its own: the pieces' shared corners are the
//   same numbers.
#pragma once

#include <utility>
#include <vector>

#include "sweepwright/position/local_plane.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright {

using PlaneRing = std::vector<PlanePoint>;

struct PlanePolygon {
  PlaneRing outer;
  std::vector<PlaneRing> holes;
};

struct PlaneRegion {
  std::vector<PlanePolygon> polygons;
};

PlaneRegion to_plane(const Region& region, const LocalPlane& plane);
Region to_region(const PlaneRegion& region, const LocalPlane& plane);

/// A stretch of the plane along one axis.
struct Span {
  Length low;
  Length high;
  Length extent() const { return high - low; }
};

Span extent_right(const PlaneRegion& region);
Span extent_up(const PlaneRegion& region);

/// The parts left and right of the line right = `at`. Either may be empty.
std::pair<PlaneRegion, PlaneRegion> split_right(const PlaneRegion& region, Length at);
/// The parts below and above the line up = `at`. Either may be empty.
std::pair<PlaneRegion, PlaneRegion> split_up(const PlaneRegion& region, Length at);

/// Where the region reaches, along `right`, within the strip of the plane between two heights:
/// disjoint spans in rising order. Empty when the strip misses the region.
std::vector<Span> spans_in_strip(const PlaneRegion& region, Span strip_up);

/// True when no straight line between two places of the region leaves it by more than a hair: the
/// region fills its hull but for `share` of it.
bool is_convex(const PlaneRegion& region, double share = 1e-3);

/// The direction of the long side of the smallest rectangle round the region: the turn from the
/// plane's axis, 0 to 180 degrees. Corners within `tolerance` of a straight side do not count.
Angle long_axis(const PlaneRegion& region, Length tolerance);

using PlaneLine = std::vector<PlanePoint>;

/// An open line without the points that lie within `tolerance` of the line through the rest; both
/// ends stay. Source: D. H. Douglas and T. K. Peucker, Cartographica 10 (1973), through
/// Boost.Geometry.
PlaneLine thinned(const PlaneLine& line, Length tolerance);

/// Puts corners of one region that lie on an edge of another into that edge, so that shared
/// boundaries have the same corners on both sides.
void share_corners(std::vector<PlaneRegion>& regions);

}  // namespace sweepwright
