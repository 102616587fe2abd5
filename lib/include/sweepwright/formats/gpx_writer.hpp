// Writes waypoints and routes as GPX 1.1 for tablets and GPS receivers.
//
// Conventions: WGS 84; longitudes in [-180, 180) with 7 decimals (1 cm). Receivers steer along
//   shortest lines between route points, so legs need no extra points. UTF-8.
// Domain: everywhere.
// Source: TopoGrafix, GPX 1.1 Schema Documentation, and its XML Schema (tests validate against it).
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "sweepwright/formats/sink.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright::formats {

struct GpxPoint {
  Position position;
  std::string name;
  std::string description;  ///< may be empty
  std::string symbol;       ///< `sym`: may be empty
};

struct GpxRoute {
  std::string name;
  std::string description;  ///< may be empty
  std::vector<GpxPoint> points;
};

struct GpxDocument {
  std::string creator;  ///< as creator(provenance) writes it
  std::string name;
  std::string description;  ///< cautions and provenance: provenance_text()
  std::optional<TimePoint> time;
  std::vector<GpxPoint> waypoints;
  std::vector<GpxRoute> routes;
};

/// How points are named in the file.
enum class GpxNames {
  full,
  /// At most six capital letters and digits for old receivers; the full name goes to `cmt`.
  short_names,
};

void write_gpx(Sink& sink, const GpxDocument& document, GpxNames names = GpxNames::full);

/// One short name for each name: its letters and digits in capitals, cut to `most`, unlike all
/// others; equal names get equal short names. `most` is at least 3; throws Error(value) when there
/// are more names than short names.
std::vector<std::string> short_names(std::span<const std::string> names, std::size_t most = 6);

}  // namespace sweepwright::formats
