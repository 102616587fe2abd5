#include "grid/mgrs_zone.hpp"

#include <GeographicLib/UTMUPS.hpp>
#include <cmath>
#include <string_view>

namespace sweepwright::grid {
namespace {

constexpr std::string_view kBands = "CDEFGHJKLMNPQRSTUVWX";
constexpr double kMapTolerance = 0.1;     // metres
constexpr double kGroundTolerance = 0.1;  // metres
constexpr double kPoleOnMap = 2e6;        // metres: UPS gives the poles these coordinates
constexpr double kFalseNorthing = 1e7;    // metres, south of the equator
constexpr int kDeepest = 14;

/// West and east limits; equal where there is no such zone.
std::pair<int, int> longitudes(int number, char band) {
  const int west = 6 * number - 186;
  if (band == 'V' && number == 31) return {0, 3};
  if (band == 'V' && number == 32) return {3, 12};
  if (band == 'X' && number >= 31 && number <= 37) {
    // 32, 34 and 36 are shared out among their neighbours.
    constexpr std::pair<int, int> kSvalbard[] = {{0, 9},   {9, 9},   {9, 21}, {21, 21},
                                                 {21, 33}, {33, 33}, {33, 42}};
    return kSvalbard[number - 31];
  }
  return {west, west + 6};
}

std::vector<MgrsZone> make_zones() {
  std::vector<MgrsZone> zones;
  zones.push_back({0, 'Z', {{-180, 84}, {180, 90}}});
  for (std::size_t i = kBands.size(); i-- > 0;) {
    const double south = -80 + 8 * static_cast<double>(i);
    const double north = kBands[i] == 'X' ? 84 : south + 8;
    for (int number = 1; number <= 60; ++number) {
      const auto [west, east] = longitudes(number, kBands[i]);
      if (west == east) continue;
      zones.push_back({number,
                       kBands[i],
                       {{static_cast<double>(west), south}, {static_cast<double>(east), north}}});
    }
  }
  zones.push_back({0, 'A', {{-180, -90}, {180, -80}}});
  return zones;
}

double metres_between(FlatPoint a, FlatPoint b) {
  const double degree = kWgs84EquatorialRadiusMetres / kDegreesPerRadian;
  return degree * std::hypot((a.x - b.x) * std::cos(a.y / kDegreesPerRadian), a.y - b.y);
}

FlatPoint half_way(FlatPoint a, FlatPoint b) {
  return {(a.x + b.x) / 2, (a.y + b.y) / 2};
}

/// Appends the edge from `a` to `b` (degrees, and the same on the map), without `a`.
void append_on_map(const MgrsZone& zone, FlatPoint a, FlatPoint b, FlatPoint map_a, FlatPoint map_b,
                   int depth, FlatRing& out) {
  const FlatPoint middle = half_way(a, b);
  const FlatPoint map_middle = to_map(zone, middle);
  const FlatPoint straight = half_way(map_a, map_b);
  const double off = std::hypot(map_middle.x - straight.x, map_middle.y - straight.y);
  const bool long_edge = std::abs(b.x - a.x) > 45;  // could look straight by chance, round a pole
  if (depth < kDeepest && (off > kMapTolerance || long_edge)) {
    append_on_map(zone, a, middle, map_a, map_middle, depth + 1, out);
    append_on_map(zone, middle, b, map_middle, map_b, depth + 1, out);
  } else {
    out.push_back(map_b);
  }
}

FlatRing ring_to_map(const MgrsZone& zone, const FlatRing& ring) {
  FlatRing out;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const FlatPoint a = ring[i];
    const FlatPoint b = ring[(i + 1) % ring.size()];
    append_on_map(zone, a, b, to_map(zone, a), to_map(zone, b), 0, out);
  }
  return out;
}

bool is_pole(const MgrsZone& zone, FlatPoint metres) {
  return zone.polar() && metres.x == kPoleOnMap && metres.y == kPoleOnMap;
}

/// Appends the map's straight line from `map_a` to `map_b` in degrees, without its end.
void append_on_ground(const MgrsZone& zone, FlatPoint map_a, FlatPoint map_b, FlatPoint a,
                      FlatPoint b, double near_longitude, int depth, FlatRing& out) {
  const FlatPoint map_middle = half_way(map_a, map_b);
  const FlatPoint middle = from_map(zone, map_middle, near_longitude);
  if (depth < kDeepest && metres_between(middle, half_way(a, b)) > kGroundTolerance) {
    append_on_ground(zone, map_a, map_middle, a, middle, near_longitude, depth + 1, out);
    append_on_ground(zone, map_middle, map_b, middle, b, near_longitude, depth + 1, out);
  } else {
    out.push_back(a);
  }
}

}  // namespace

const std::vector<MgrsZone>& mgrs_zones() {
  static const std::vector<MgrsZone> zones = make_zones();
  return zones;
}

const MgrsZone* find_zone(int number, char band) {
  if (band == 'Y') band = 'Z';
  if (band == 'B') band = 'A';
  for (const MgrsZone& zone : mgrs_zones()) {
    if (zone.number == number && zone.band == band) return &zone;
  }
  return nullptr;
}

FlatPoint to_map(const MgrsZone& zone, FlatPoint degrees) {
  int number = 0;
  bool north = false;
  FlatPoint metres{};
  GeographicLib::UTMUPS::Forward(degrees.y, degrees.x, number, north, metres.x, metres.y,
                                 zone.number);
  // The equator counts as north; for the zones south of it, it is their north edge.
  if (!zone.polar() && north != zone.north()) metres.y += north ? kFalseNorthing : -kFalseNorthing;
  return metres;
}

FlatPoint from_map(const MgrsZone& zone, FlatPoint metres, double near_longitude) {
  FlatPoint degrees{};
  GeographicLib::UTMUPS::Reverse(zone.number, zone.north(), metres.x, metres.y, degrees.y,
                                 degrees.x);
  degrees.x = near_longitude + std::remainder(degrees.x - near_longitude, 360);
  return degrees;
}

FlatRegion to_map(const MgrsZone& zone, const FlatRegion& region) {
  FlatRegion out;
  for (const FlatPolygon& polygon : region) {
    FlatPolygon laid{ring_to_map(zone, polygon.outer), {}};
    for (const FlatRing& hole : polygon.holes) laid.holes.push_back(ring_to_map(zone, hole));
    out.push_back(laid);
  }
  return out;
}

FlatRegion square_on_ground(const MgrsZone& zone, FlatPoint south_west, double side) {
  const FlatPoint corners[] = {south_west,
                               {south_west.x + side, south_west.y},
                               {south_west.x + side, south_west.y + side},
                               {south_west.x, south_west.y + side}};
  const FlatPoint middle{south_west.x + side / 2, south_west.y + side / 2};
  // No square reaches over 180 from here: polar squares lie in one quarter of the pole's map.
  const double near_longitude =
      zone.polar() ? from_map(zone, middle, 0).x : 6.0 * zone.number - 183;
  // Edges of 100 m are within 2 mm as they are, up to 84 degrees.
  const int depth = side <= 100 && !zone.polar() ? kDeepest : 0;
  FlatPoint ground[4];
  for (int i = 0; i < 4; ++i) ground[i] = from_map(zone, corners[i], near_longitude);
  FlatRing ring;
  for (int i = 0; i < 4; ++i) {
    const FlatPoint map_a = corners[i];
    const FlatPoint map_b = corners[(i + 1) % 4];
    FlatPoint a = ground[i];
    FlatPoint b = ground[(i + 1) % 4];
    // The pole has the longitude of the edge that leads there: two corners at one place.
    if (is_pole(zone, map_a)) a.x = b.x;
    if (is_pole(zone, map_b)) b.x = a.x;
    append_on_ground(zone, map_a, map_b, a, b, near_longitude, depth, ring);
    if (is_pole(zone, map_b)) ring.push_back(b);
  }
  return cut({{ring, {}}}, zone.limits);
}

}  // namespace sweepwright::grid
