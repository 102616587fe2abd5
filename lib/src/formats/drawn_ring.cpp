#include "formats/drawn_ring.hpp"

#include <algorithm>
#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/position/plotting.hpp"

namespace sweepwright::formats {
namespace {

/// Corners closer than this are the same corner on both sides of a cut.
constexpr Length kSameCorner = Length::metres(0.05);

Position position_of(const DrawnPoint& p) {
  return Position::at(Angle::degrees(p.latitude), Angle::degrees(p.longitude));
}

bool is_pole(Position p) {
  return std::abs(p.latitude().degrees()) == 90;
}

bool same_corner(Position a, Position b) {
  return geodesic(a, b).length < kSameCorner;
}

/// How many pieces an edge needs so that each piece's shorter way round is the way it was drawn.
int pieces_of(double longitude_step) {
  const double size = std::abs(longitude_step);
  if (size >= 360) return 4;  // all the way round a pole
  return size == 180 ? 2 : 1;
}

/// An area round a pole is drawn closed along it: up the antimeridian to the pole, along it and
/// down again. On the ground that is a cut of no width, which is taken out.
Ring without_pole_seams(Ring ring) {
  const auto not_pole = [](Position p) { return !is_pole(p); };
  const auto first = std::find_if(ring.begin(), ring.end(), not_pole);
  if (first == ring.end()) return ring;
  std::rotate(ring.begin(), first, ring.end());
  Ring out;
  for (auto at = ring.begin(); at != ring.end();) {
    if (!is_pole(*at)) {
      out.push_back(*at++);
      continue;
    }
    const auto after = std::find_if(at, ring.end(), not_pole);
    const Position next = after == ring.end() ? ring.front() : *after;
    // The twin of the corner before the seam stays: make_region() drops repeated corners.
    if (!same_corner(out.back(), next)) out.insert(out.end(), at, after);
    at = after;
  }
  return out;
}

}  // namespace

bool is_closed(const DrawnRing& ring) {
  return ring.points.size() >= 4 &&
         same_corner(position_of(ring.points.front()), position_of(ring.points.back()));
}

Ring to_ring(const DrawnRing& drawn, RingRemarks& remarks) {
  std::vector<DrawnPoint> points = drawn.points;
  if (points.size() < 3) {
    throw Error(ErrorCode::geometry, "an area needs three corners at least, and this ring has " +
                                         std::to_string(points.size()));
  }
  if (!is_closed(drawn)) {
    ++remarks.open_rings;
    points.push_back(points.front());
  }

  Ring ring;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const DrawnPoint& a = points[i];
    const DrawnPoint& b = points[i + 1];
    if (std::abs(a.longitude) > 180) ++remarks.longitudes_past_180;
    const bool along_pole = is_pole(position_of(a)) && is_pole(position_of(b));
    const double step = b.longitude - a.longitude;
    const int pieces = along_pole ? 1 : pieces_of(step);
    for (int k = 0; k < pieces; ++k) {
      const double share = static_cast<double>(k) / pieces;
      ring.push_back(position_of(
          {a.longitude + share * step, a.latitude + share * (b.latitude - a.latitude)}));
    }
    if (!along_pole && pieces == 1 && std::abs(step) > 180) ++remarks.edges_over_half_way;
  }
  return from_plotted_edges(without_pole_seams(std::move(ring)));
}

}  // namespace sweepwright::formats
