// Regions as maps draw them: flat polygons in longitude and latitude, cut at the antimeridian.
#include <algorithm>
#include <cmath>

#include "position/drawn_line.hpp"
#include "position/plane_shapes.hpp"
#include "sweepwright/position/plotting.hpp"

namespace sweepwright {
namespace {

using shapes::bg::correct;

/// Above any latitude: what is closed up there is cut off at the pole.
constexpr double kBeyondPole = 100;

/// A ring as a polygon of the map. Round a pole it covers all of -180..180 and reaches beyond the
/// pole; elsewhere it lies in one or more turns of the globe.
struct FlatRing {
  shapes::Polygon polygon;
  bool round_pole = false;
};

shapes::Polygon to_polygon(const std::vector<Unrolled>& line) {
  shapes::Polygon polygon;
  for (const Unrolled& p : with_crossings(line)) {
    polygon.outer().push_back({p.longitude, p.latitude});
  }
  correct(polygon);
  return polygon;
}

/// Where the ring runs over a pole: the index of the corner after it; none for most rings.
std::size_t after_pole(const Ring& ring) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const std::size_t next = (i + 1) % ring.size();
    const Unrolled here{ring[i].longitude().degrees(), ring[i].latitude().degrees()};
    if (is_pole(ring[i]) ||
        (!is_pole(ring[next]) && over_pole(here, unrolled_after(here, ring[next])))) {
      return next;
    }
  }
  return ring.size();
}

/// A ring through a pole: the rest of the ring is one line, and the pole is the map's edge between
/// its ends.
FlatRing flat_through_pole(Ring ring, std::size_t after, Length tolerance) {
  std::rotate(ring.begin(), ring.begin() + static_cast<std::ptrdiff_t>(after), ring.end());
  if (is_pole(ring.back())) ring.pop_back();
  std::vector<Unrolled> line = drawn(ring, tolerance);
  const double pole = line.front().latitude + line.back().latitude < 0 ? -90 : 90;
  line.push_back({line.back().longitude, pole});
  line.push_back({line.front().longitude, pole});
  return {to_polygon(line), false};
}

/// A line once round a pole, repeated until it spans the whole map, and closed beyond the pole.
FlatRing flat_round_pole(std::vector<Unrolled> line, double pole) {
  if (line.back().longitude < line.front().longitude) std::reverse(line.begin(), line.end());
  std::vector<Unrolled> wide;
  for (const double turn : {-360.0, 0.0, 360.0}) {
    for (const Unrolled& p : line) wide.push_back({p.longitude + turn, p.latitude});
    wide.pop_back();  // the next turn begins with it
  }
  // What lies well outside the map is not needed. (Drawn pieces are 90 degrees long at most.)
  const auto first =
      std::find_if(wide.begin(), wide.end(), [](const Unrolled& p) { return p.longitude > -300; });
  const auto last =
      std::find_if(wide.rbegin(), wide.rend(), [](const Unrolled& p) { return p.longitude < 300; });
  std::vector<Unrolled> polygon(first, last.base());
  polygon.push_back({polygon.back().longitude, pole});
  polygon.push_back({polygon.front().longitude, pole});
  return {to_polygon(polygon), true};
}

FlatRing flat(const Ring& ring, bool hole, Length tolerance) {
  if (const std::size_t after = after_pole(ring); after < ring.size()) {
    return flat_through_pole(ring, after, tolerance);
  }
  Path round = ring;
  round.push_back(ring.front());
  std::vector<Unrolled> line = drawn(round, tolerance);
  // Whole turns only: the steps' last digits would leave a hair's breadth open.
  const double turns = std::round((line.back().longitude - line.front().longitude) / 360);
  line.back().longitude = line.front().longitude + 360 * turns;
  if (turns == 0) return {to_polygon(line), false};
  // An outer ring runs east round the north pole; a hole runs west round it.
  return flat_round_pole(line, (turns > 0) != hole ? kBeyondPole : -kBeyondPole);
}

/// The turns of the globe that a polygon lies in. One that it only touches is not counted.
struct Windows {
  double first;
  double last;
};

Windows windows_of(const shapes::Box& around) {
  return {window_of(around.min_corner().x()), std::ceil((around.max_corner().x() + 180) / 360) - 1};
}

shapes::Polygon shifted(shapes::Polygon polygon, double degrees) {
  for (shapes::Point& p : polygon.outer()) p.x(p.x() + degrees);
  return polygon;
}

/// The parts in -180..180 of what an outer ring bounds.
shapes::MultiPolygon cut(const FlatRing& ring) {
  shapes::Box around;
  shapes::bg::envelope(ring.polygon, around);
  const Windows windows = windows_of(around);
  if (!ring.round_pole && windows.first == windows.last) {
    return {shifted(ring.polygon, -360 * windows.first)};
  }
  shapes::MultiPolygon pieces;
  if (ring.round_pole) {
    shapes::bg::intersection(ring.polygon, shapes::Box({-180, -90}, {180, 90}), pieces);
    return pieces;
  }
  for (double window = windows.first; window <= windows.last; ++window) {
    // Boost.Geometry works on a grid of 1e-7 of the whole extent: the box is kept small.
    const double west = std::max(-180.0, around.min_corner().x() - 360 * window - 1);
    const double east = std::min(180.0, around.max_corner().x() - 360 * window + 1);
    shapes::bg::intersection(
        shifted(ring.polygon, -360 * window),
        shapes::Box({west, around.min_corner().y() - 1}, {east, around.max_corner().y() + 1}),
        pieces);
  }
  return pieces;
}

/// Takes a hole out of the pieces of a polygon.
void open_hole(shapes::MultiPolygon& pieces, const FlatRing& hole) {
  shapes::Box around;
  shapes::bg::envelope(hole.polygon, around);
  const Windows windows = hole.round_pole ? Windows{0, 0} : windows_of(around);
  const double shift = -360 * windows.first;
  if (pieces.size() == 1 && !hole.round_pole && around.min_corner().x() + shift > -180 &&
      around.max_corner().x() + shift < 180) {
    // No cut meets the hole: its corners stay as they are.
    pieces[0].inners().push_back(shifted(hole.polygon, shift).outer());
    return;
  }
  for (double window = windows.first; window <= windows.last; ++window) {
    shapes::MultiPolygon rest;
    shapes::bg::difference(pieces, shifted(hole.polygon, -360 * window), rest);
    pieces = rest;
  }
}

/// The last digits of a cut do not count: it lies on the antimeridian, or on the pole.
double at_most(double size, double value) {
  return std::abs(value) > size - 1e-9 ? std::copysign(size, value) : value;
}

template <typename RingType>
PlotLine plot_line(const RingType& ring) {
  PlotLine out;
  for (const shapes::Point& p : ring) {
    out.push_back({Angle::degrees(at_most(180, p.x())), Angle::degrees(at_most(90, p.y()))});
  }
  return out;
}

}  // namespace

std::vector<PlotPolygon> plotted(const Region& region, Length tolerance) {
  std::vector<PlotPolygon> out;
  for (const Polygon& polygon : region.polygons) {
    shapes::MultiPolygon pieces = cut(flat(polygon.outer, false, tolerance));
    for (const Ring& hole : polygon.holes) open_hole(pieces, flat(hole, true, tolerance));
    for (shapes::Polygon& piece : pieces) {
      correct(piece);
      PlotPolygon plot{plot_line(piece.outer()), {}};
      for (const auto& inner : piece.inners()) plot.holes.push_back(plot_line(inner));
      out.push_back(plot);
    }
  }
  return out;
}

}  // namespace sweepwright
