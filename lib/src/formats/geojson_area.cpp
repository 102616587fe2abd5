#include "formats/geojson_area.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <string>

#include "formats/area_collector.hpp"
#include "formats/json_document.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::array<std::string_view, 9> kTypes = {
    "FeatureCollection", "Feature", "Polygon",    "MultiPolygon",      "LineString",
    "MultiLineString",   "Point",   "MultiPoint", "GeometryCollection"};

const JsonValue* member(const JsonValue& object, std::string_view name) {
  for (const JsonMember& m : object.members) {
    if (m.name == name) return &m.value;
  }
  return nullptr;
}

/// A value and its JSON pointer.
class Place {
 public:
  Place(const JsonValue& value, std::string pointer)
      : value_(&value), pointer_(std::move(pointer)) {}
  const JsonValue& value() const { return *value_; }

  std::string text() const {
    return pointer_.empty() ? fmt::format("line {}", value_->line)
                            : fmt::format("line {} {}", value_->line, pointer_);
  }
  [[noreturn]] void fail(std::string message, std::string hint = {}) const {
    throw Error(ErrorCode::input, std::move(message), std::move(hint), text());
  }

  Place item(std::size_t index) const {
    return {value_->items[index], pointer_ + "/" + std::to_string(index)};
  }
  std::optional<Place> field(std::string_view name) const {
    const JsonValue* const found = member(*value_, name);
    if (found == nullptr) return std::nullopt;
    return Place(*found, pointer_ + "/" + pointer_part(name));
  }
  Place needed_list(std::string_view name) const {
    const std::optional<Place> found = field(name);
    if (!found) fail(fmt::format("'{}' is missing", name));
    found->require_list();
    return *found;
  }
  void require_list() const {
    if (value_->kind != JsonKind::array)
      fail(fmt::format("{} where a list is wanted", shown(*value_)));
  }

  /// Calls `read` with each item of the list.
  template <typename Read>
  void each(const Read& read) const {
    require_list();
    for (std::size_t i = 0; i < value_->items.size(); ++i) read(item(i));
  }

 private:
  const JsonValue* value_;
  std::string pointer_;
};

std::string text_member(const JsonValue& object, std::string_view name) {
  const JsonValue* const found = member(object, name);
  return found != nullptr && found->kind == JsonKind::text ? std::string(trimmed(found->text)) : "";
}

class GeoJsonAreaReader {
 public:
  AreaReading read(const JsonValue& document) {
    const Place root(document, "");
    if (document.kind != JsonKind::object) {
      root.fail("this is no GeoJSON: " + shown(document) + " where an object is wanted");
    }
    require_wgs84(root);
    const std::string name = name_of(document);
    object(root, "");
    return area_.reading(name);
  }

 private:
  /// RFC 7946 knows WGS 84 only; files of the older GeoJSON may name something else.
  static void require_wgs84(const Place& root) {
    const std::optional<Place> crs = root.field("crs");
    if (!crs || crs->value().kind == JsonKind::null) return;
    const std::optional<Place> properties = crs->field("properties");
    const std::string name = properties ? text_member(properties->value(), "name") : "";
    if (name.ends_with("CRS84") || name.ends_with(":4326")) return;
    crs->fail(fmt::format("the file is in the reference system '{}'", printable(name)),
              "save it again in WGS 84 longitude and latitude");
  }

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

  void object(const Place& place, const std::string& name) {
    const std::string type = text_member(place.value(), "type");
    if (type.empty()) {
      place.fail("this is no GeoJSON object: it has no 'type'",
                 "GeoJSON holds a FeatureCollection, a Feature or a geometry");
    }
    if (type == "FeatureCollection") {
      place.needed_list("features").each([&](const Place& feature) { object(feature, name); });
    } else if (type == "Feature") {
      const std::optional<Place> geometry = place.field("geometry");
      if (!geometry || geometry->value().kind == JsonKind::null) {
        ++area_.odd.without_geometry;
      } else {
        object(*geometry, name_of(place.value()));
      }
    } else if (type == "GeometryCollection") {
      place.needed_list("geometries").each([&](const Place& part) { object(part, name); });
    } else {
      geometry(place, type, name);
    }
  }

  void geometry(const Place& place, const std::string& type, const std::string& name) {
    const auto add_polygon = [&](const Place& rings) { polygon(rings, name); };
    const auto add_line = [&](const Place& line) { area_.add_line(ring(line), name); };
    if (type == "Polygon") {
      add_polygon(place.needed_list("coordinates"));
    } else if (type == "MultiPolygon") {
      place.needed_list("coordinates").each(add_polygon);
    } else if (type == "LineString") {
      add_line(place.needed_list("coordinates"));
    } else if (type == "MultiLineString") {
      place.needed_list("coordinates").each(add_line);
    } else if (type == "Point") {
      ++area_.odd.points;
    } else if (type == "MultiPoint") {
      area_.odd.points += place.needed_list("coordinates").value().items.size();
    } else {
      place.field("type")->fail(fmt::format("'{}' is no type of GeoJSON", printable(type)),
                                spelling_hint(type, kTypes));
    }
  }

  void polygon(const Place& rings, const std::string& name) {
    DrawnPolygon drawn;
    drawn.name = name;
    rings.each([&](const Place& one) { drawn.rings.push_back(ring(one)); });
    if (drawn.rings.empty()) {
      ++area_.odd.without_geometry;  // RFC 7946 section 3.1: an empty list is a null geometry
    } else {
      area_.add_polygon(std::move(drawn));
    }
  }

  DrawnRing ring(const Place& list) {
    DrawnRing ring;
    ring.place = list.text();
    list.each([&](const Place& position) { ring.points.push_back(point(position)); });
    return ring;
  }

  DrawnPoint point(const Place& position) {
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

AreaReading read_geojson_area(const JsonValue& value) {
  return GeoJsonAreaReader().read(value);
}

AreaReading parse_geojson_area(std::string_view text) {
  return read_geojson_area(parse_json(text));
}

}  // namespace sweepwright::formats
