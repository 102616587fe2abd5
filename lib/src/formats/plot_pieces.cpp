#include "formats/plot_pieces.hpp"

#include <algorithm>
#include <cmath>

#include "formats/number_text.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

Angle rounded(Angle angle) {
  return Angle::degrees(std::round(angle.degrees() * kUnitsPerDegree) / kUnitsPerDegree);
}

/// The points rounded, those that fall together written once.
PlotLine rounded(const PlotLine& line) {
  PlotLine out;
  for (const PlotPoint& p : line) {
    const PlotPoint point{rounded(p.longitude), rounded(p.latitude)};
    if (out.empty() || out.back() != point) out.push_back(point);
  }
  return out;
}

/// A ring of three different points and the repeat of the first.
constexpr std::size_t kLeastRing = 4;

}  // namespace

std::vector<PlotLine> lines_to_draw(const Path& path) {
  if (path.size() < 2) {
    throw Error(ErrorCode::value, "a line has fewer than two places");
  }
  std::vector<PlotLine> lines;
  for (const PlotLine& line : plotted(path)) {
    PlotLine drawn = rounded(line);
    if (drawn.size() == 1) drawn.push_back(drawn.front());  // a line of no length is still a line
    lines.push_back(std::move(drawn));
  }
  return lines;
}

std::vector<PlotPolygon> polygons_to_draw(const Region& region) {
  std::vector<PlotPolygon> polygons;
  for (const PlotPolygon& polygon : plotted(region)) {
    PlotPolygon drawn{rounded(polygon.outer), {}};
    if (drawn.outer.size() < kLeastRing) continue;
    for (const PlotLine& hole : polygon.holes) {
      PlotLine ring = rounded(hole);
      if (ring.size() >= kLeastRing) drawn.holes.push_back(std::move(ring));
    }
    polygons.push_back(std::move(drawn));
  }
  return polygons;
}

FlatBoxes flat_boxes(const grid::LatLonBox& box) {
  if (box.west < box.east) return {{{{box.south, box.north, box.west, box.east}, {}}}, 1};
  FlatBoxes parts{};
  const Angle limit = Angle::degrees(180);
  if (box.west < limit) parts.boxes[parts.count++] = {box.south, box.north, box.west, limit};
  if (box.east > -limit) parts.boxes[parts.count++] = {box.south, box.north, -limit, box.east};
  return parts;
}

int pieces_of_parallel(const FlatBox& box, Angle latitude) {
  // A shortest line of half-width h (radians of longitude) along a parallel leaves it by about
  // R sin(2 latitude) h^2 / 4.
  const double half = (box.east - box.west).radians() / 2;
  const double at_most = kWgs84EquatorialRadiusMetres * half * half / 4;
  if (at_most <= kPlottingTolerance.metres()) return 1;  // small cells, of which there are most
  const double leaves = at_most * std::abs(std::sin(2 * latitude.radians()));
  return std::max(1, static_cast<int>(std::ceil(std::sqrt(leaves / kPlottingTolerance.metres()))));
}

}  // namespace sweepwright::formats
