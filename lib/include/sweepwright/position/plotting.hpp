// Between shortest lines and the straight longitude-latitude lines that map programs draw.
//
// Problem: GeoJSON (RFC 7946 section 3.1.1) and most programs draw a straight line in longitude and
//   latitude between two places, while aircraft and Region edges follow the geodesic. 40 NM
//   east-west at 60 N differ by 190 m. Points are added so that both agree to a tolerance. RFC 7946
//   section 3.1.9 also wants lines and polygons cut at the antimeridian.
// Conventions: longitudes may run past 180 between the steps here ("unrolled"), never in the
// results. Accuracy: `tolerance` at the middle of each added piece (plotting_test.cpp).
#pragma once

#include <vector>

#include "sweepwright/position/region.hpp"

namespace sweepwright {

/// The largest distance by which plotted lines may depart from the lines meant.
inline constexpr Length kPlottingTolerance = Length::metres(1);

/// Adds corners to a ring whose edges are meant straight in longitude and latitude until its
/// geodesic edges agree with them. A ring's edge takes the shorter way round in longitude.
Ring from_plotted_edges(const Ring& ring, Length tolerance = kPlottingTolerance);

/// A place as plotted: longitude may be -180 or +180, according to the side the line comes from.
struct PlotPoint {
  Angle longitude;
  Angle latitude;
  bool operator==(const PlotPoint&) const = default;
};
using PlotLine = std::vector<PlotPoint>;

struct PlotPolygon {
  PlotLine outer;  ///< counterclockwise, closed: the last point repeats the first (RFC 7946 3.1.6)
  std::vector<PlotLine> holes;  ///< clockwise, closed
};

/// The path with points added along its geodesics, cut where it crosses the antimeridian.
std::vector<PlotLine> plotted(const Path& path, Length tolerance = kPlottingTolerance);

/// The region with points added along its edges, cut at the antimeridian; a region round a pole is
/// closed along the pole.
std::vector<PlotPolygon> plotted(const Region& region, Length tolerance = kPlottingTolerance);

}  // namespace sweepwright
