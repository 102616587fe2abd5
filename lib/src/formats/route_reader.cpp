#include "sweepwright/formats/route_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "formats/json_document.hpp"
#include "formats/utf8.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/input_file.hpp"
#include "sweepwright/locate/read_position.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kMostPlaces = 1000;

std::string on_line(int line) {
  return fmt::format("line {}", line);
}

const JsonValue* member(const JsonValue& object, std::string_view name) {
  for (const JsonMember& one : object.members) {
    if (one.name == name) return &one.value;
  }
  return nullptr;
}

const JsonValue& needed_list(const JsonValue& object, std::string_view name) {
  const JsonValue* const found = member(object, name);
  if (found != nullptr && found->kind == JsonKind::array) return *found;
  throw Error(ErrorCode::input, fmt::format("the list '{}' is missing", name), {},
              on_line(object.line));
}

Position place(const JsonValue& pair) {
  if (pair.kind != JsonKind::array || pair.items.size() < 2 ||
      pair.items[0].kind != JsonKind::number || pair.items[1].kind != JsonKind::number) {
    throw Error(ErrorCode::input, shown(pair) + " where a position is wanted",
                "a position is [longitude, latitude]", on_line(pair.line));
  }
  try {
    return Position::at(Angle::degrees(pair.items[1].number), Angle::degrees(pair.items[0].number));
  } catch (const Error& error) {
    throw error.at(on_line(pair.line));
  }
}

/// What a GeoJSON file holds: its lines, and its points in their order.
struct Found {
  std::vector<Path> lines;
  Path points;
};

void collect(const JsonValue& object, Found& found) {
  const JsonValue* const type = member(object, "type");
  const std::string kind = type != nullptr ? type->text : "";
  if (kind == "FeatureCollection") {
    for (const JsonValue& feature : needed_list(object, "features").items) collect(feature, found);
  } else if (kind == "Feature") {
    const JsonValue* const geometry = member(object, "geometry");
    if (geometry != nullptr && geometry->kind == JsonKind::object) collect(*geometry, found);
  } else if (kind == "LineString") {
    Path line;
    for (const JsonValue& pair : needed_list(object, "coordinates").items) {
      line.push_back(place(pair));
    }
    found.lines.push_back(std::move(line));
  } else if (kind == "Point") {
    found.points.push_back(place(needed_list(object, "coordinates")));
  } else {
    throw Error(ErrorCode::input, fmt::format("'{}' is no line or point", printable(kind)),
                "a route is a GeoJSON LineString, or points in their order", on_line(object.line));
  }
}

Path of_geojson(std::string_view text) {
  Found found;
  collect(parse_json(text), found);
  if (found.lines.size() > 1) {
    throw Error(ErrorCode::input, fmt::format("the file has {} lines", found.lines.size()),
                "a route is one line: join them");
  }
  return found.lines.empty() ? found.points : found.lines.front();
}

Path of_lines(std::string_view text) {
  Path route;
  locate::Options options;
  options.strict = true;
  for (int number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    try {
      route.push_back(locate::read_position(line, options).position);
    } catch (const Error& error) {
      throw error.at(on_line(number));
    }
    if (route.size() > kMostPlaces) break;
  }
  return route;
}

}  // namespace

Path parse_route(std::string_view text) {
  if (trimmed(text).empty()) throw Error(ErrorCode::input, "the file is empty");
  const Path route = trimmed(text).starts_with('{') ? of_geojson(text) : of_lines(text);
  if (route.size() < 2 || route.size() > kMostPlaces) {
    throw Error(
        ErrorCode::input,
        fmt::format("a route of {} {}", route.size(), route.size() == 1 ? "place" : "places"),
        fmt::format("give 2 to {} places", kMostPlaces));
  }
  return route;
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
