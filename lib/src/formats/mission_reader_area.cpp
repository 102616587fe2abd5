#include "formats/mission_reader_area.hpp"

#include "formats/mission_values.hpp"
#include "sweepwright/formats/area_reader.hpp"

namespace sweepwright::formats {
namespace {

/// A search area with more corners than this is a drawing: it comes in a file of its own.
constexpr std::size_t kMostCorners = 1000;

Region region_of_corners(const JsonCursor& cursor) {
  const std::size_t mistakes_before = cursor.mistakes().count();
  const Ring ring = cursor.list(3, kMostCorners, position);
  if (cursor.mistakes().count() != mistakes_before) return {};
  return make_region({Polygon{ring, {}}});
}

}  // namespace

SearchArea search_area(const JsonCursor& cursor, const FileLoader& load) {
  JsonObject in(cursor);
  SearchArea area;
  area.name = in.optional("name", short_text).value_or("");
  if (const auto region = in.optional("corners", region_of_corners)) area.region = *region;
  in.optional("file", [&](const JsonCursor& place) {
    std::string name = short_text(place);
    if (name == "-") {
      throw Error(ErrorCode::value, "standard input cannot be the area of a mission",
                  "name a GeoJSON or KML file");
    }
    const InputText file = load(name);
    try {
      const AreaReading reading = parse_area(file.text);
      area.region = reading.region;
      if (area.name.empty()) area.name = reading.name;
      area.remarks = reading.remarks;
      area.inputs.push_back({name, file.digest.sha256});
    } catch (const Error& error) {
      throw error.at(name);
    }
    return name;
  });
  if (in.has("corners") && in.has("file")) {
    in.mistake("file",
               Error(ErrorCode::input, "corners and file are both given", "keep one of them"));
  } else if (!in.has("corners") && !in.has("file")) {
    in.mistake("corners", Error(ErrorCode::input, "neither corners nor file is given",
                                "list the corners of the area, or name a GeoJSON or KML file"));
  }
  in.finish();
  return area;
}

}  // namespace sweepwright::formats
