// Regions as maps draw them: rings flat in longitude and latitude, after a cut along the
// antimeridian where one is needed. The cut is made on the ground, where the antimeridian is one
// straight line that runs on over the pole and down the meridian of Greenwich.
#include <algorithm>
#include <cmath>
#include <optional>

#include "position/drawn_line.hpp"
#include "sweepwright/position/plane_region.hpp"
#include "sweepwright/position/plotting.hpp"

namespace sweepwright {
namespace {

/// Corners this near to the cut lie on it.
constexpr Length kOnCut = Length::metres(1e-3);

using Line = std::vector<Unrolled>;

/// Where the ring runs over a pole: the index of the corner after it; none for most rings.
std::optional<std::size_t> after_pole(const Ring& ring) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const std::size_t next = (i + 1) % ring.size();
    const Unrolled here{ring[i].longitude().degrees(), ring[i].latitude().degrees()};
    if (is_pole(ring[i]) ||
        (!is_pole(ring[next]) && over_pole(here, unrolled_after(here, ring[next])))) {
      return next;
    }
  }
  return std::nullopt;
}

/// The ring as a closed line. One that goes round a pole ends a whole turn from its start.
Line flat(Ring ring, Length tolerance) {
  if (const auto after = after_pole(ring)) {
    // The rest of the ring is one line, and the pole is the map's edge between its ends.
    std::rotate(ring.begin(), ring.begin() + static_cast<std::ptrdiff_t>(*after), ring.end());
    if (is_pole(ring.back())) ring.pop_back();
    Line line = drawn(ring, tolerance);
    const double pole = line.front().latitude + line.back().latitude < 0 ? -90 : 90;
    line.push_back({line.back().longitude, pole});
    line.push_back({line.front().longitude, pole});
    line.push_back(line.front());
    return line;
  }
  ring.push_back(ring.front());
  Line line = drawn(ring, tolerance);
  // Whole turns only: the steps' last digits would leave a hair's breadth open.
  const double turns = std::round((line.back().longitude - line.front().longitude) / 360);
  line.back().longitude = line.front().longitude + 360 * turns;
  return line;
}

/// The turn of the globe that the whole line lies in; none when it crosses the antimeridian or goes
/// round a pole. A turn that it only touches is not counted.
std::optional<double> only_window(const Line& line) {
  const auto [west, east] = std::minmax_element(
      line.begin(), line.end(),
      [](const Unrolled& a, const Unrolled& b) { return a.longitude < b.longitude; });
  const double first = window_of(west->longitude);
  const double last = std::ceil((east->longitude + 180) / 360) - 1;
  if (first < last || line.front().longitude != line.back().longitude) return std::nullopt;
  return first;
}

PlotLine plot_line(Line line, bool counterclockwise) {
  const double shift = -360 * only_window(line).value_or(0);
  double twice_area = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    twice_area +=
        line[i - 1].longitude * line[i].latitude - line[i].longitude * line[i - 1].latitude;
  }
  if ((twice_area > 0) != counterclockwise) std::reverse(line.begin(), line.end());
  PlotLine out;
  for (const Unrolled& p : line) {
    out.push_back({Angle::degrees(p.longitude + shift), Angle::degrees(p.latitude)});
  }
  return out;
}

/// A polygon that lies in one turn of the globe, with its outer ring drawn already.
PlotPolygon plot(const Line& outer, const std::vector<Ring>& holes, Length tolerance) {
  PlotPolygon drawn{plot_line(outer, true), {}};
  for (const Ring& hole : holes) drawn.holes.push_back(plot_line(flat(hole, tolerance), false));
  return drawn;
}

/// A plane on which the antimeridian runs upwards, and how far right it lies.
struct Cut {
  LocalPlane plane;
  Length at;
};

Cut cut_through(const Region& region, Angle latitude) {
  const LocalPlane northward = local_plane(region);
  const double towards = latitude < northward.centre().latitude() ? 1e-3 : -1e-3;
  const bool past_pole = std::abs(latitude.degrees() + towards) > 90;
  const Angle step = Angle::degrees(past_pole ? -towards : towards);
  const auto on_antimeridian = [](Angle at) { return Position::at(at, Angle::degrees(180)); };
  const PlanePoint a = northward.to_plane(on_antimeridian(latitude));
  const PlanePoint b = northward.to_plane(on_antimeridian(latitude + step));
  const Angle axis =
      Angle::radians(std::atan2((b.right - a.right).metres(), (b.up - a.up).metres()));
  const LocalPlane plane(northward.centre(), TrueDirection(axis));
  return {plane, plane.to_plane(on_antimeridian(latitude)).right};
}

/// A corner on the cut, without the last digits' noise.
Position on_cut(Position p) {
  const double latitude = p.latitude().degrees();
  const bool pole = std::abs(latitude) > 90 - 1e-8;  // a millimetre
  const bool greenwich = std::abs(p.longitude().degrees()) < 90;
  return Position::at(Angle::degrees(pole ? std::copysign(90, latitude) : latitude),
                      Angle::degrees(greenwich && !pole ? 0 : 180));
}

Ring to_ring(const PlaneRing& ring, const Cut& cut) {
  Ring out;
  for (const PlanePoint& p : ring) {
    const Position position = cut.plane.to_position(p);
    const bool near = std::abs((p.right - cut.at).metres()) <= kOnCut.metres();
    out.push_back(near ? on_cut(position) : position);
  }
  return out;
}

void plot_part(const PlaneRegion& part, const Cut& cut, Length tolerance,
               std::vector<PlotPolygon>& out) {
  for (const PlanePolygon& polygon : part.polygons) {
    std::vector<Ring> holes;
    for (const PlaneRing& hole : polygon.holes) holes.push_back(to_ring(hole, cut));
    out.push_back(plot(flat(to_ring(polygon.outer, cut), tolerance), holes, tolerance));
  }
}

}  // namespace

std::vector<PlotPolygon> plotted(const Region& region, Length tolerance) {
  std::vector<PlotPolygon> out;
  for (const Polygon& polygon : region.polygons) {
    const Line outer = flat(polygon.outer, tolerance);
    if (only_window(outer)) {
      out.push_back(plot(outer, polygon.holes, tolerance));
      continue;
    }
    const Line crossed = with_crossings(outer);
    const auto crossing = std::find_if(crossed.begin(), crossed.end(), [](const Unrolled& p) {
      return std::remainder(p.longitude - 180, 360) == 0;
    });
    const Region whole{{polygon}};
    const Cut cut = cut_through(whole, Angle::degrees(crossing->latitude));
    const auto [left, right] = split_right(to_plane(whole, cut.plane), cut.at);
    plot_part(left, cut, tolerance, out);
    plot_part(right, cut, tolerance, out);
  }
  return out;
}

}  // namespace sweepwright
