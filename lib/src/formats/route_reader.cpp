#include "sweepwright/formats/route_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "formats/area_collector.hpp"
#include "formats/gpx_route.hpp"
#include "formats/utf8.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/input_file.hpp"
#include "sweepwright/locate/read_position.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kMostPlaces = 1000;

/// The one line of a map file, or its points when it has no line.
RouteReading drawn_route(const DrawnFile& file) {
  const std::vector<DrawnPolygon>& lines = file.drawn.lines();
  const Oddities& odd = file.drawn.odd;
  if (lines.size() > 1) {
    throw Error(ErrorCode::input, fmt::format("the file has {} lines", lines.size()),
                "a route is one line: join them, or keep the one that is meant");
  }
  const bool has_line = !lines.empty();
  const std::vector<DrawnPoint>& points =
      has_line ? lines.front().rings.front().points : file.drawn.points();
  if (points.empty()) {
    throw Error(ErrorCode::input, "the file holds no line and no point",
                "draw the route as one line");
  }
  RouteReading reading;
  reading.name = has_line && !lines.front().name.empty() ? lines.front().name : file.name;
  for (const DrawnPoint& point : points) {
    reading.route.push_back(
        Position::at(Angle::degrees(point.latitude), Angle::degrees(point.longitude)));
  }
  const auto left_out = [&](std::size_t count, std::string_view thing) {
    if (count == 0) return;
    reading.remarks.push_back(
        fmt::format("{} {}{} left out", count, thing, count == 1 ? " was" : "s were"));
  };
  if (!has_line) {
    reading.remarks.emplace_back("no line: the points were taken for the route, in their order");
  }
  left_out(file.drawn.polygons().size(), "area");
  left_out(has_line ? odd.points : 0, "point");
  left_out(odd.lines - lines.size(), "recorded track");
  left_out(odd.altitudes, "altitude");
  return reading;
}

/// Lines of positions.
RouteReading typed_route(std::string_view text) {
  RouteReading reading;
  locate::Options options;
  options.strict = true;
  for (int number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    try {
      reading.route.push_back(locate::read_position(line, options).position);
    } catch (const Error& error) {
      throw error.at(fmt::format("line {}", number));
    }
    if (reading.route.size() > kMostPlaces) break;
  }
  return reading;
}

RouteReading any_route(std::string_view text) {
  const std::string_view content = trimmed(text);
  if (content.empty()) throw Error(ErrorCode::input, "the file is empty");
  if (content.starts_with('<')) {
    return is_gpx(text) ? read_gpx_route(text) : drawn_route(read_drawn_kml(text));
  }
  if (content.starts_with('{')) return drawn_route(read_drawn_geojson(text));
  return typed_route(text);
}

}  // namespace

RouteReading parse_route(std::string_view text) {
  RouteReading reading = any_route(text);
  const std::size_t places = reading.route.size();
  if (places < 2 || places > kMostPlaces) {
    throw Error(ErrorCode::input,
                fmt::format("a route of {} {}", places, places == 1 ? "place" : "places"),
                fmt::format("give 2 to {} places", kMostPlaces));
  }
  return reading;
}

RouteFile read_route_file(const std::string& path) {
  const InputText input = read_text_file(path);
  try {
    return {parse_route(input.text), input.digest};
  } catch (const Error& error) {
    throw error.at(path == "-" ? "standard input" : shown_path(path));
  }
}

}  // namespace sweepwright::formats
