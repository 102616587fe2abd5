#include "sweepwright/formats/area_reader.hpp"

#include "formats/area_collector.hpp"
#include "formats/utf8.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/input_file.hpp"

namespace sweepwright::formats {

AreaReading parse_geojson_area(std::string_view text) {
  DrawnFile file = read_drawn_geojson(text);
  return file.drawn.reading(file.name);
}

AreaReading parse_kml_area(std::string_view text) {
  DrawnFile file = read_drawn_kml(text);
  return file.drawn.reading(file.name);
}

AreaReading parse_area(std::string_view text) {
  const std::string_view content = trimmed(text);
  if (content.empty()) throw Error(ErrorCode::input, "the file is empty");
  if (content.starts_with('<')) return parse_kml_area(text);
  if (content.starts_with('{') || content.starts_with('[')) return parse_geojson_area(text);
  throw Error(
      ErrorCode::input,
      "this is neither GeoJSON nor KML: it begins with '" + printable(content.substr(0, 20)) + "'",
      "save the area as GeoJSON or KML");
}

AreaFile read_area_file(const std::string& path) {
  const InputText input = read_text_file(path);
  try {
    return {parse_area(input.text), input.digest};
  } catch (const Error& error) {
    throw error.at(path == "-" ? "standard input" : shown_path(path));
  }
}

}  // namespace sweepwright::formats
