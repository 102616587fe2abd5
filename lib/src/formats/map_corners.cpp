#include "formats/map_corners.hpp"

namespace sweepwright::formats {
namespace {

SectorCorners corners_within(const Region& sector, Length tolerance) {
  SectorCorners out{tolerance, {}};
  for (const Polygon& polygon : sector.polygons) {
    out.rings.push_back({main_corners(polygon.outer, tolerance), false});
    for (const Ring& hole : polygon.holes) {
      out.rings.push_back({main_corners(hole, tolerance), true});
    }
  }
  return out;
}

std::size_t count(const SectorCorners& corners) {
  std::size_t total = 0;
  for (const CornerRing& ring : corners.rings) total += ring.corners.size();
  return total;
}

}  // namespace

SectorCorners sector_corners(const Region& sector) {
  constexpr int kMostRounds = 8;
  SectorCorners out = corners_within(sector, kCornerTolerance);
  for (int round = 0; round < kMostRounds && count(out) > kMostCorners; ++round) {
    out = corners_within(sector, out.tolerance * 2);
  }
  return out;
}

std::string corner_letter(std::size_t index) {
  std::string letter(1, static_cast<char>('A' + index % 26));
  if (index >= 26) letter += std::to_string(index / 26 + 1);
  return letter;
}

}  // namespace sweepwright::formats
