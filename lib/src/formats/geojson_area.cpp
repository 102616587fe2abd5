#include "formats/geojson_area.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <string>

#include "formats/area_collector.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::array<std::string_view, 9> kTypes = {
    "FeatureCollection", "Feature", "Polygon",    "MultiPolygon",      "LineString",
    "MultiLineString",   "Point",   "MultiPoint", "GeometryCollection"};

class GeoJsonReader {
 public:
  DrawnFile read(const GeoJsonPlace& place) {
    object(place, "");
    return {std::move(area_), name_of(place.value())};
  }

 private:
  /// A feature's name hangs on its properties, a collection's on itself.
  static std::string name_of(const JsonValue& object) {
    const JsonValue* const properties = member(object, "properties");
    for (const JsonValue* where : {properties, &object}) {
      if (where == nullptr) continue;
      for (const std::string_view field : {"name", "Name", "NAME", "title"}) {
        if (std::string name = text_member(*where, field); !name.empty()) return name;
      }
    }
    return {};
  }

  void object(const GeoJsonPlace& place, const std::string& name) {
    const std::string type = text_member(place.value(), "type");
    if (type.empty()) {
      place.fail("this is no GeoJSON object: it has no 'type'",
                 "GeoJSON holds a FeatureCollection, a Feature or a geometry");
    }
    if (type == "FeatureCollection") {
      place.needed_list("features").each([&](const GeoJsonPlace& feature) {
        object(feature, name);
      });
    } else if (type == "Feature") {
      const std::optional<GeoJsonPlace> geometry = place.field("geometry");
      if (!geometry || geometry->value().kind == JsonKind::null) {
        ++area_.odd.without_geometry;
      } else {
        object(*geometry, name_of(place.value()));
      }
    } else if (type == "GeometryCollection") {
      place.needed_list("geometries").each([&](const GeoJsonPlace& part) { object(part, name); });
    } else {
      geometry(place, type, name);
    }
  }

  void geometry(const GeoJsonPlace& place, const std::string& type, const std::string& name) {
    const auto add_polygon = [&](const GeoJsonPlace& rings) { polygon(rings, name); };
    const auto add_line = [&](const GeoJsonPlace& line) { area_.add_line(ring(line), name); };
    const auto add_point = [&](const GeoJsonPlace& at) {
      const std::size_t altitudes = area_.odd.altitudes;
      area_.add_point(point(at));
      area_.odd.altitudes = altitudes;  // nobody misses that of a point
    };
    if (type == "Polygon") {
      add_polygon(place.needed_list("coordinates"));
    } else if (type == "MultiPolygon") {
      place.needed_list("coordinates").each(add_polygon);
    } else if (type == "LineString") {
      add_line(place.needed_list("coordinates"));
    } else if (type == "MultiLineString") {
      place.needed_list("coordinates").each(add_line);
    } else if (type == "Point") {
      add_point(place.needed_list("coordinates"));
    } else if (type == "MultiPoint") {
      place.needed_list("coordinates").each(add_point);
    } else {
      place.field("type")->fail(fmt::format("'{}' is no type of GeoJSON", printable(type)),
                                spelling_hint(type, kTypes));
    }
  }

  void polygon(const GeoJsonPlace& rings, const std::string& name) {
    DrawnPolygon drawn;
    drawn.name = name;
    rings.each([&](const GeoJsonPlace& one) { drawn.rings.push_back(ring(one)); });
    if (drawn.rings.empty()) {
      ++area_.odd.without_geometry;  // RFC 7946 section 3.1: an empty list is a null geometry
    } else {
      area_.add_polygon(std::move(drawn));
    }
  }

  DrawnRing ring(const GeoJsonPlace& list) {
    DrawnRing ring;
    ring.place = list.text();
    list.each([&](const GeoJsonPlace& position) { ring.points.push_back(point(position)); });
    return ring;
  }

  DrawnPoint point(const GeoJsonPlace& position) {
    const JsonValue& value = position.value();
    if (value.kind != JsonKind::array || value.items.size() < 2) {
      position.fail(shown(value) + " where a position is wanted",
                    "a position is [longitude, latitude]");
    }
    for (std::size_t i = 0; i < 2; ++i) {
      if (value.items[i].kind != JsonKind::number) {
        position.item(i).fail(shown(value.items[i]) + " where a number of degrees is wanted",
                              "a position is [longitude, latitude], without quotes");
      }
    }
    if (value.items.size() > 2) ++area_.odd.altitudes;
    const DrawnPoint drawn{value.items[0].number, value.items[1].number};
    try {
      require_on_earth(drawn);
    } catch (const Error& error) {
      throw error.at(position.text());
    }
    return drawn;
  }

  AreaCollector area_;
};

}  // namespace

void require_geojson(const GeoJsonPlace& root) {
  if (root.value().kind != JsonKind::object) {
    root.fail("this is no GeoJSON: " + shown(root.value()) + " where an object is wanted");
  }
  const std::optional<GeoJsonPlace> crs = root.field("crs");
  if (!crs || crs->value().kind == JsonKind::null) return;
  const std::optional<GeoJsonPlace> properties = crs->field("properties");
  const std::string name = properties ? text_member(properties->value(), "name") : "";
  if (name.ends_with("CRS84") || name.ends_with(":4326")) return;
  crs->fail(fmt::format("the file is in the reference system '{}'", printable(name)),
            "save it again in WGS 84 longitude and latitude");
}

DrawnFile read_drawn_geojson(const JsonValue& value) {
  const GeoJsonPlace root(value, "");
  require_geojson(root);
  return GeoJsonReader().read(root);
}

DrawnFile read_drawn_geojson(std::string_view text) {
  return read_drawn_geojson(parse_json(text));
}

AreaReading read_geojson_area(const GeoJsonPlace& place) {
  DrawnFile file = GeoJsonReader().read(place);
  return file.drawn.reading(file.name);
}

AreaReading read_geojson_area(const JsonValue& value) {
  DrawnFile file = read_drawn_geojson(value);
  return file.drawn.reading(file.name);
}

}  // namespace sweepwright::formats
