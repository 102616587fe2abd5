#include "sweepwright/position/plotting.hpp"

#include <algorithm>
#include <cmath>

#include "position/drawn_line.hpp"

namespace sweepwright {
namespace {

constexpr int kDeepest = 16;  // 65,536 pieces of one edge

Position position_of(Unrolled p) {
  return Position::at(Angle::degrees(std::clamp(p.latitude, -90.0, 90.0)),
                      Angle::degrees(p.longitude));
}

/// Distance of `p` from the straight line a-b as drawn, on the ground.
double metres_off_line(Unrolled a, Unrolled b, Unrolled p) {
  const double degree = kWgs84EquatorialRadiusMetres / kDegreesPerRadian;
  const double shrink = std::cos(p.latitude / kDegreesPerRadian);
  const double x = (b.longitude - a.longitude) * shrink;
  const double y = b.latitude - a.latitude;
  const double px = (p.longitude - a.longitude) * shrink;
  const double py = p.latitude - a.latitude;
  const double line = std::hypot(x, y);
  return degree * (line == 0 ? std::hypot(px, py) : std::abs(px * y - py * x) / line);
}

/// The geodesic between two drawn points.
class Edge {
 public:
  Edge(Unrolled from, Unrolled to)
      : from_(from), to_(to), line_(geodesic(position_of(from), position_of(to))) {}

  Unrolled at(double share) const {
    return unrolled_after(
        from_, travel(position_of(from_), line_.start_track, line_.length * share).position);
  }

  /// Whether the straight line drawn between the ends stays near. A geodesic across the equator can
  /// meet that line in the middle, so the quarters are looked at too.
  bool agrees_with_drawn(Length tolerance) const {
    for (const double share : {0.5, 0.25, 0.75}) {
      if (metres_off_line(from_, to_, at(share)) > tolerance.metres()) return false;
    }
    return true;
  }

 private:
  Unrolled from_;
  Unrolled to_;
  GeodesicLine line_;
};

/// True when a short edge is surely within the tolerance. The geodesic's equations in longitude l
/// and latitude p (p'' = -sin p cos p l'^2, l'' = 2 tan p l' p') bound the distance at the middle
/// by R/8 (sin p cos p dl^2 + 2 sin p dl dp); twice that is asked for.
bool surely_close(Unrolled a, Unrolled b, Length tolerance) {
  const double across = std::abs(b.longitude - a.longitude) / kDegreesPerRadian;
  const double along = std::abs(b.latitude - a.latitude) / kDegreesPerRadian;
  const double steepest = std::max(std::abs(a.latitude), std::abs(b.latitude)) / kDegreesPerRadian;
  if (across > 0.02 || along > 0.02 || steepest > 1.5) return false;  // 1 degree; 86 degrees
  const double off = kWgs84EquatorialRadiusMetres / 8 * std::sin(steepest) *
                     (across * across + 2 * across * along);
  return 2 * off < tolerance.metres();
}

/// Appends the geodesic from `a` to `b`, without `a`, as a line to draw.
void append_geodesic(Unrolled a, Unrolled b, Length tolerance, int depth,
                     std::vector<Unrolled>& out) {
  if (surely_close(a, b, tolerance)) {
    out.push_back(b);
    return;
  }
  const Edge edge(a, b);
  const bool turns = std::abs(b.longitude - a.longitude) > 90;  // round a pole: always divided
  if (depth < kDeepest && (turns || !edge.agrees_with_drawn(tolerance))) {
    const Unrolled middle = edge.at(0.5);
    append_geodesic(a, middle, tolerance, depth + 1, out);
    append_geodesic(middle, b, tolerance, depth + 1, out);
  } else {
    out.push_back(b);
  }
}

/// Appends the geodesic to the next corner. A map has a whole line for a pole: the way to it and
/// the way from it are meridians, and between them lies a piece along that line.
void append_edge(Position from, Position to, Length tolerance, std::vector<Unrolled>& out) {
  const Unrolled last = out.back();
  const Unrolled next = unrolled_after(last, to);
  if (is_pole(to)) {
    out.push_back({last.longitude, next.latitude});
  } else if (is_pole(from)) {
    out.push_back({next.longitude, last.latitude});
    out.push_back(next);
  } else if (over_pole(last, next)) {
    const double pole = last.latitude + next.latitude < 0 ? -90 : 90;
    out.push_back({last.longitude, pole});
    out.push_back({next.longitude, pole});
    out.push_back(next);
  } else {
    append_geodesic(last, next, tolerance, 0, out);
  }
}

void append_plotted(Unrolled a, Unrolled b, Length tolerance, int depth, Ring& out) {
  const Unrolled drawn_middle{(a.longitude + b.longitude) / 2, (a.latitude + b.latitude) / 2};
  if (depth < kDeepest && !Edge(a, b).agrees_with_drawn(tolerance)) {
    append_plotted(a, drawn_middle, tolerance, depth + 1, out);
    append_plotted(drawn_middle, b, tolerance, depth + 1, out);
  } else {
    out.push_back(position_of(b));
  }
}

}  // namespace

bool is_pole(Position p) {
  return std::abs(p.latitude().degrees()) == 90;
}

bool over_pole(Unrolled from, Unrolled to) {
  return std::abs(std::abs(to.longitude - from.longitude) - 180) < 1e-9;
}

Unrolled unrolled_after(Unrolled previous, Position next) {
  // Whole turns are added, so that a corner keeps its last digit. Half a turn goes west.
  const double longitude = next.longitude().degrees();
  const double turns = std::ceil((previous.longitude - longitude - 180) / 360);
  return {longitude + 360 * turns, next.latitude().degrees()};
}

std::vector<Unrolled> drawn(const Path& path, Length tolerance) {
  std::vector<Unrolled> out;
  if (path.empty()) return out;
  out.push_back({path[0].longitude().degrees(), path[0].latitude().degrees()});
  for (std::size_t i = 1; i < path.size(); ++i) {
    append_edge(path[i - 1], path[i], tolerance, out);
  }
  return out;
}

std::vector<Unrolled> with_crossings(const std::vector<Unrolled>& line) {
  std::vector<Unrolled> out;
  for (const Unrolled& p : line) {
    if (!out.empty()) {
      const Unrolled last = out.back();
      const double edge = 360 * window_of(std::max(last.longitude, p.longitude)) - 180;
      if (std::min(last.longitude, p.longitude) < edge &&
          edge < std::max(last.longitude, p.longitude)) {
        const double share = (edge - last.longitude) / (p.longitude - last.longitude);
        out.push_back({edge, last.latitude + share * (p.latitude - last.latitude)});
      }
    }
    out.push_back(p);
  }
  return out;
}

double window_of(double longitude) {
  return std::floor((longitude + 180) / 360);
}

Ring from_plotted_edges(const Ring& ring, Length tolerance) {
  Ring out;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Position next = ring[(i + 1) % ring.size()];
    out.push_back(ring[i]);
    const Unrolled a{ring[i].longitude().degrees(), ring[i].latitude().degrees()};
    append_plotted(a, unrolled_after(a, next), tolerance, 0, out);
    out.pop_back();  // the next corner, which the next round adds
  }
  return out;
}

std::vector<PlotLine> plotted(const Path& path, Length tolerance) {
  const std::vector<Unrolled> line = with_crossings(drawn(path, tolerance));
  const auto in_window = [](Unrolled p, double window) {
    return PlotPoint{Angle::degrees(p.longitude - 360 * window), Angle::degrees(p.latitude)};
  };
  std::vector<PlotLine> out;
  double last_window = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double window = window_of((line[i - 1].longitude + line[i].longitude) / 2);
    if (out.empty() || window != last_window) out.push_back({in_window(line[i - 1], window)});
    out.back().push_back(in_window(line[i], window));
    last_window = window;
  }
  return out;
}

}  // namespace sweepwright
