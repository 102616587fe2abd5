#include "sector/cut.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>

namespace sweepwright::sector {
namespace {

/// Cuts are found to this; a strip of it along 100 km is a square metre.
constexpr double kCutMetres = 1e-5;
/// A cut goes through the nearest corner when that changes the lower side by no more than this
/// share of the whole: no unit gets a hair of ground beyond.
constexpr double kThroughCorner = 1e-9;
/// Legs that crossed_outside() tries: enough to weigh shapes, not to measure them.
constexpr int kTrialLegs = 60;

template <typename Function>
void for_each_ring(const PlaneRegion& region, Function f) {
  for (const PlanePolygon& polygon : region.polygons) {
    f(polygon.outer);
    for (const PlaneRing& hole : polygon.holes) f(hole);
  }
}

struct Flat {
  double along;  ///< the axis that is cut
  double other;
};

Flat flat(PlanePoint p, CutOf of) {
  return of == CutOf::right ? Flat{p.right.metres(), p.up.metres()}
                            : Flat{p.up.metres(), p.right.metres()};
}

/// Twice the signed area under an edge, as far as it lies below `at`. What lies beyond is laid flat
/// onto the cut, where it holds no area.
double twice_area_below(Flat a, Flat b, double at) {
  const auto trapezium = [](Flat p, Flat q) { return (q.other - p.other) * (p.along + q.along); };
  if (a.along <= at && b.along <= at) return trapezium(a, b);
  if (a.along >= at && b.along >= at) return trapezium({at, a.other}, {at, b.other});
  const double share = (at - a.along) / (b.along - a.along);
  const Flat meeting{at, a.other + share * (b.other - a.other)};
  return a.along < at ? trapezium(a, meeting) + trapezium(meeting, {at, b.other})
                      : trapezium({at, a.other}, meeting) + trapezium(meeting, b);
}

double area_below(const PlaneRegion& part, CutOf of, double at) {
  double twice = 0;
  for_each_ring(part, [&](const PlaneRing& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      twice += twice_area_below(flat(ring[i], of), flat(ring[(i + 1) % ring.size()], of), at);
    }
  });
  return std::abs(twice) / 2;
}

/// Where `area_of_low(at)`, which grows from 0 to `whole` over the span, is `low_share` of it.
template <typename Function>
Length solve(Span span, double whole, double low_share, Function area_of_low) {
  const auto excess = [&](double at) { return area_of_low(at) - low_share * whole; };
  std::uintmax_t steps = 100;
  const auto [low, high] = boost::math::tools::toms748_solve(
      excess, span.low.metres(), span.high.metres(), -low_share * whole, (1 - low_share) * whole,
      [](double a, double b) { return std::abs(b - a) <= kCutMetres; }, steps);
  return Length::metres((low + high) / 2);
}

Length nearest_corner(const PlaneRegion& part, CutOf of, Length at) {
  double nearest = extent(part, of).low.metres();
  for_each_ring(part, [&](const PlaneRing& ring) {
    for (const PlanePoint& p : ring) {
      const double corner = flat(p, of).along;
      if (std::abs(corner - at.metres()) < std::abs(nearest - at.metres())) nearest = corner;
    }
  });
  return Length::metres(nearest);
}

}  // namespace

Span extent(const PlaneRegion& part, CutOf of) {
  return of == CutOf::right ? extent_right(part) : extent_up(part);
}

std::pair<PlaneRegion, PlaneRegion> split(const PlaneRegion& part, CutOf of, Length at) {
  return of == CutOf::right ? split_right(part, at) : split_up(part, at);
}

Length plane_cut(const PlaneRegion& part, CutOf of, double low_share) {
  const Span span = extent(part, of);
  return solve(span, area_below(part, of, span.high.metres()), low_share,
               [&](double at) { return area_below(part, of, at); });
}

Length ground_cut(const PlaneRegion& part, CutOf of, double low_share, const LocalPlane& plane) {
  const double whole = area(to_region(part, plane)).square_metres();
  const auto low_area = [&](double at) {
    return area(to_region(split(part, of, Length::metres(at)).first, plane)).square_metres();
  };
  const Length at = solve(extent(part, of), whole, low_share, low_area);
  const Length corner = nearest_corner(part, of, at);
  const double change = low_area(corner.metres()) - low_share * whole;
  return std::abs(change) <= kThroughCorner * whole ? corner : at;
}

Area plane_area(const PlaneRegion& part) {
  return Area::square_metres(area_below(part, CutOf::right, extent_right(part).high.metres()));
}

Area crossed_outside(const PlaneRegion& part, CutOf legs) {
  const CutOf across = other(legs);
  const Span span = extent(part, across);
  const double gap = span.extent().metres() / kTrialLegs;
  double crossed = 0;
  std::vector<double> edges;
  for (int leg = 0; leg < kTrialLegs; ++leg) {
    const double at = span.low.metres() + (leg + 0.5) * gap;
    edges.clear();
    for_each_ring(part, [&](const PlaneRing& ring) {
      for (std::size_t i = 0; i < ring.size(); ++i) {
        const Flat a = flat(ring[i], across);
        const Flat b = flat(ring[(i + 1) % ring.size()], across);
        if ((a.along < at) == (b.along < at)) continue;
        edges.push_back(a.other + (at - a.along) / (b.along - a.along) * (b.other - a.other));
      }
    });
    std::sort(edges.begin(), edges.end());
    for (std::size_t i = 1; i + 1 < edges.size(); i += 2) crossed += edges[i + 1] - edges[i];
  }
  return Area::square_metres(crossed * gap);
}

}  // namespace sweepwright::sector
