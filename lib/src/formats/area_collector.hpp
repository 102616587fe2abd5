// AreaCollector: makes a Region of what a reader found drawn in a file, and says how; keeps the
// lines and points for the reader of routes. Private to the formats room.
//
// Conventions: rings as they stand in the file: longitudes may run past 180, rings may be open or
//   run either way. Places are `line 12 /features/0`, for messages.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/formats/area_reader.hpp"

namespace sweepwright::formats {

struct JsonValue;

struct DrawnPoint {
  double longitude = 0;
  double latitude = 0;
};

/// Throws Error(input) for what is no place on Earth.
void require_on_earth(const DrawnPoint& point);

struct DrawnRing {
  std::vector<DrawnPoint> points;
  std::string place;
};

struct DrawnPolygon {
  std::vector<DrawnRing> rings;  ///< the outer one first
  std::string name;
};

/// What a file may hold that is read in one particular way, or not at all.
struct Oddities {
  std::size_t altitudes = 0;
  std::size_t points = 0;
  std::size_t lines = 0;
  std::size_t without_geometry = 0;
  std::size_t loose_rings = 0;  ///< a LinearRing of KML that is no boundary of a polygon
  std::vector<std::string> others;
};

class AreaCollector {
 public:
  void add_polygon(DrawnPolygon polygon) { polygons_.push_back(std::move(polygon)); }
  /// A line: a closed one serves as area when the file has no polygon.
  void add_line(DrawnRing line, std::string name);
  void add_point(DrawnPoint point);
  const std::vector<DrawnPolygon>& polygons() const { return polygons_; }
  /// Each as a polygon of one ring, which may be open.
  const std::vector<DrawnPolygon>& lines() const { return lines_; }
  const std::vector<DrawnPoint>& points() const { return points_; }
  Oddities odd;

  /// `file_name`: what the file calls itself. Throws Error when there is no area, or none that can
  /// be worked with.
  AreaReading reading(const std::string& file_name);

 private:
  std::vector<DrawnPolygon> polygons_;
  std::vector<DrawnPolygon> lines_;
  std::vector<DrawnPoint> points_;
};

/// All that was found drawn in a file, and what the file calls itself.
struct DrawnFile {
  AreaCollector drawn;
  std::string name;
};

/// Throw Error(input) with the line for what is no such file.
DrawnFile read_drawn_geojson(std::string_view text);
DrawnFile read_drawn_geojson(const JsonValue& value);
DrawnFile read_drawn_kml(std::string_view text);

}  // namespace sweepwright::formats
