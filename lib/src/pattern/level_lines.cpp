#include "pattern/level_lines.hpp"

#include <algorithm>

#include "pattern/plane_line.hpp"
#include "sweepwright/terrain/isolines.hpp"

namespace sweepwright::pattern {
namespace {

using Points = std::vector<PlanePoint>;

Length gap(PlanePoint a, PlanePoint b) {
  return distance(a, b, b);
}

Length line_length(const Points& points) {
  Length total;
  for (std::size_t i = 1; i < points.size(); ++i) total += gap(points[i - 1], points[i]);
  return total;
}

/// All rings of the region as closed lines.
std::vector<Points> edges_of(const PlaneRegion& region) {
  std::vector<Points> edges;
  const auto add = [&](PlaneRing ring) {
    ring.push_back(ring.front());
    edges.push_back(std::move(ring));
  };
  for (const PlanePolygon& polygon : region.polygons) {
    add(polygon.outer);
    for (const PlaneRing& hole : polygon.holes) add(hole);
  }
  return edges;
}

/// The parts of a line in the region.
std::vector<LevelLine> cut(const LevelLine& line, const PlaneRegion& region,
                           const std::vector<Points>& edges) {
  std::vector<LevelLine> parts;
  bool open = false;  // whether the last part goes on
  bool whole = true;
  for (std::size_t i = 1; i < line.points.size(); ++i) {
    const PlanePoint from = line.points[i - 1];
    const PlanePoint to = line.points[i];
    const std::vector<double> shares = crossings(from, to, edges);
    for (std::size_t k = 1; k < shares.size(); ++k) {
      const bool kept = is_inside(between(from, to, (shares[k - 1] + shares[k]) / 2), region);
      if (kept && !open) parts.push_back({{between(from, to, shares[k - 1])}, false});
      if (kept) parts.back().points.push_back(between(from, to, shares[k]));
      open = kept;
      whole = whole && kept;
    }
  }
  if (!line.closed || parts.empty()) return parts;
  if (whole) {
    parts.front().closed = true;
  } else if (open && parts.size() > 1 &&
             gap(parts.back().points.back(), parts.front().points.front()) < Length::metres(1)) {
    // A closed line that was cut: its last part runs on into its first.
    Points& first = parts.front().points;
    parts.back().points.insert(parts.back().points.end(), first.begin() + 1, first.end());
    parts.erase(parts.begin());
  }
  return parts;
}

Points thinned(const LevelLine& line, Length tolerance) {
  const Points& points = line.points;
  if (!line.closed) return sweepwright::thinned(points, tolerance);
  // Both halves of a closed line: a chord from a point to itself has no direction.
  const auto half = std::max_element(points.begin(), points.end(), [&](PlanePoint a, PlanePoint b) {
    return gap(points.front(), a) < gap(points.front(), b);
  });
  Points out = sweepwright::thinned({points.begin(), half + 1}, tolerance);
  out.pop_back();
  for (const PlanePoint& point : sweepwright::thinned({half, points.end()}, tolerance)) {
    out.push_back(point);
  }
  return out;
}

/// The point of a line at which it would be begun from there: any of a closed one, an end of an
/// open one.
std::size_t entry(const LevelLine& line, PlanePoint from) {
  const Points& points = line.points;
  if (!line.closed)
    return gap(from, points.back()) < gap(from, points.front()) ? points.size() - 1 : 0;
  const auto nearest =
      std::min_element(points.begin(), points.end(),
                       [&](PlanePoint a, PlanePoint b) { return gap(from, a) < gap(from, b); });
  return static_cast<std::size_t>(nearest - points.begin());
}

/// Makes a line begin at that entry: an open one runs the other way, a closed one is turned round.
void begin_at(LevelLine& line, std::size_t point) {
  if (point == 0) return;
  if (!line.closed) {
    std::reverse(line.points.begin(), line.points.end());
    return;
  }
  line.points.pop_back();
  std::rotate(line.points.begin(),
              line.points.begin() + static_cast<std::ptrdiff_t>(point % line.points.size()),
              line.points.end());
  line.points.push_back(line.points.front());
}

}  // namespace

std::vector<LevelLine> level_lines(const SearchedGround& ground, Length height,
                                   const LevelLineFit& fit) {
  const std::vector<Points> edges = edges_of(ground.flat);
  std::vector<LevelLine> lines;
  for (const terrain::Isoline& isoline : terrain::isolines(ground.model, height, ground.region)) {
    const LevelLine whole{to_plane(isoline.points, ground.plane), isoline.closed};
    for (LevelLine& part : cut(whole, ground.flat, edges)) {
      if (line_length(part.points) < fit.shortest) continue;
      part.points = thinned(part, fit.tolerance);
      // The model's lines have high ground on their left.
      if (fit.high_ground == Turn::right) std::reverse(part.points.begin(), part.points.end());
      lines.push_back(std::move(part));
    }
  }
  return lines;
}

LevelLine take_nearest(std::vector<LevelLine>& lines, std::optional<PlanePoint> from) {
  std::size_t best = 0;
  std::size_t best_entry = 0;
  Length best_cost;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::size_t at = from ? entry(lines[i], *from) : 0;
    const Length cost = from ? gap(*from, lines[i].points[at]) : -line_length(lines[i].points);
    if (i > 0 && cost >= best_cost) continue;
    best = i;
    best_entry = at;
    best_cost = cost;
  }
  LevelLine line = std::move(lines.at(best));
  lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(best));
  begin_at(line, best_entry);
  return line;
}

}  // namespace sweepwright::pattern
