#include "formats/area_collector.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

#include "formats/drawn_ring.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kLargestLongitude = 360;

/// `1 ring`, `3 rings`.
std::string counted(std::size_t count, std::string_view thing) {
  return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

/// `was` or `were`.
std::string_view past(std::size_t count) {
  return count == 1 ? "was" : "were";
}

std::vector<std::string> remarks_of(const Oddities& odd, const RingRemarks& rings) {
  std::vector<std::string> remarks;
  const auto add = [&](std::size_t count, std::string_view thing, std::string_view how) {
    if (count > 0)
      remarks.push_back(fmt::format("{} {} {}", counted(count, thing), past(count), how));
  };
  add(rings.open_rings, "ring", "not closed: the last corner was joined to the first");
  add(rings.longitudes_past_180, "longitude", "beyond 180: taken round the Earth");
  add(rings.edges_over_half_way, "edge",
      "more than half way round the Earth: read as crossing the antimeridian");
  add(odd.loose_rings, "ring", "no boundary of a polygon: taken for an area");
  add(odd.altitudes, "altitude", "left out");
  add(odd.points, "point", "left out");
  add(odd.lines, "line", "left out");
  add(odd.without_geometry, "feature", "without geometry");
  remarks.insert(remarks.end(), odd.others.begin(), odd.others.end());
  return remarks;
}

Polygon to_polygon(const DrawnPolygon& drawn, RingRemarks& remarks) {
  Polygon polygon;
  for (const DrawnRing& ring : drawn.rings) {
    try {
      const Ring edges = to_ring(ring, remarks);
      if (polygon.outer.empty()) {
        polygon.outer = edges;
      } else {
        polygon.holes.push_back(edges);
      }
    } catch (const Error& error) {
      throw error.at(ring.place);
    }
  }
  return polygon;
}

/// The name that all polygons share, else that of the file.
std::string name_of(const std::vector<DrawnPolygon>& polygons, const std::string& file_name) {
  const std::string& name = polygons.front().name;
  const bool shared = std::all_of(polygons.begin(), polygons.end(),
                                  [&](const DrawnPolygon& p) { return p.name == name; });
  return shared && !name.empty() ? name : file_name;
}

}  // namespace

void require_on_earth(const DrawnPoint& point) {
  const auto fail = [](std::string message, std::string hint) {
    throw Error(ErrorCode::input, std::move(message), std::move(hint));
  };
  if (!std::isfinite(point.longitude) || !std::isfinite(point.latitude)) {
    fail("a coordinate is not a finite number", "give longitude and latitude in degrees");
  }
  if (std::abs(point.latitude) <= 90 && std::abs(point.longitude) <= kLargestLongitude) return;
  if (std::abs(point.longitude) > kLargestLongitude && std::abs(point.latitude) > 90) {
    fail(
        fmt::format("longitude {} and latitude {} are no degrees", point.longitude, point.latitude),
        "are they metres of a map grid? save the file in WGS 84 longitude and latitude");
  }
  if (std::abs(point.latitude) > 90) {
    fail(fmt::format("latitude {} lies outside -90 to 90", point.latitude),
         std::abs(point.longitude) <= 90 && std::abs(point.latitude) <= 180
             ? "are the two swapped? the order is longitude, latitude"
             : "the order is longitude, latitude");
  }
  fail(fmt::format("longitude {} lies outside -{} to {}", point.longitude, kLargestLongitude,
                   kLargestLongitude),
       "the order is longitude, latitude");
}

void AreaCollector::add_line(DrawnRing line, std::string name) {
  ++odd.lines;
  lines_.push_back({{std::move(line)}, std::move(name)});
}

void AreaCollector::add_point(DrawnPoint point) {
  ++odd.points;
  points_.push_back(point);
}

AreaReading AreaCollector::reading(const std::string& file_name) {
  if (polygons_.empty()) {
    std::copy_if(lines_.begin(), lines_.end(), std::back_inserter(polygons_),
                 [](const DrawnPolygon& line) { return is_closed(line.rings.front()); });
    if (!polygons_.empty()) {
      odd.lines -= polygons_.size();
      odd.others.insert(odd.others.begin(), fmt::format("no polygon: {} {} taken for the area",
                                                        counted(polygons_.size(), "closed line"),
                                                        past(polygons_.size())));
    }
  }
  if (polygons_.empty()) {
    std::string found;
    if (odd.points > 0) found += " " + counted(odd.points, "point");
    if (odd.lines > 0) found += (found.empty() ? " " : " and ") + counted(odd.lines, "open line");
    throw Error(ErrorCode::input,
                found.empty() ? "the file holds no area" : "the file holds no area, only" + found,
                "draw the area as a polygon");
  }

  RingRemarks rings;
  std::vector<Polygon> polygons;
  for (const DrawnPolygon& drawn : polygons_) {
    Polygon polygon = to_polygon(drawn, rings);
    if (polygons_.size() > 1) {
      try {
        make_region({polygon});  // a fault of its own is told with its place
      } catch (const Error& error) {
        throw error.at(drawn.rings.front().place);
      }
    }
    polygons.push_back(std::move(polygon));
  }
  try {
    Region region = make_region(std::move(polygons));
    return {std::move(region), name_of(polygons_, file_name), remarks_of(odd, rings)};
  } catch (const Error& error) {
    if (polygons_.size() > 1) throw;
    throw error.at(polygons_.front().rings.front().place);
  }
}

}  // namespace sweepwright::formats
