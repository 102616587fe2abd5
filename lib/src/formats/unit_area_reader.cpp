#include "sweepwright/formats/unit_area_reader.hpp"

#include <optional>

#include "formats/geojson_area.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::string_view kUnit = "unit";

std::optional<PropertyValue> plain_value(const JsonValue& value) {
  switch (value.kind) {
    case JsonKind::boolean:
      return PropertyValue(value.text == "true");
    case JsonKind::number:
      return PropertyValue(value.number);
    case JsonKind::text:
      return PropertyValue(value.text);
    case JsonKind::null:
    case JsonKind::array:
    case JsonKind::object:
      return std::nullopt;
  }
  return std::nullopt;
}

bool has_area(const JsonValue& geometry) {
  const std::string type = text_member(geometry, "type");
  return type == "Polygon" || type == "MultiPolygon" || type == "GeometryCollection";
}

UnitArea unit_area(const GeoJsonPlace& feature, const GeoJsonPlace& properties,
                   const GeoJsonPlace& unit, std::vector<std::string>& remarks) {
  UnitArea area;
  area.unit = trimmed(unit.value().text);
  if (unit.value().kind != JsonKind::text || area.unit.empty()) {
    unit.fail(shown(unit.value()) + " where the name of a unit is wanted",
              "write the unit's callsign in quotes");
  }
  AreaReading reading = read_geojson_area(feature);
  area.region = std::move(reading.region);
  for (const std::string& remark : reading.remarks) remarks.push_back(area.unit + ": " + remark);
  for (const JsonMember& member : properties.value().members) {
    const std::optional<PropertyValue> value = plain_value(member.value);
    if (member.name != kUnit && value) area.kept.push_back({member.name, *value});
  }
  return area;
}

}  // namespace

UnitAreas parse_unit_areas(std::string_view text) {
  UnitAreas found;
  if (!trimmed(text).starts_with('{')) return found;
  const JsonValue document = parse_json(text);
  const GeoJsonPlace root(document, "");
  require_geojson(root);
  if (text_member(document, "type") != "FeatureCollection") return found;

  std::size_t without_unit = 0;
  root.needed_list("features").each([&](const GeoJsonPlace& feature) {
    const auto geometry = feature.field("geometry");
    if (!geometry || !has_area(geometry->value())) return;
    const auto properties = feature.field("properties");
    const auto unit = properties ? properties->field(kUnit) : std::nullopt;
    if (unit && unit->value().kind != JsonKind::null) {
      found.areas.push_back(unit_area(feature, *properties, *unit, found.remarks));
    } else {
      ++without_unit;
    }
  });
  if (!found.areas.empty() && without_unit > 0) {
    found.remarks.push_back(fmt::format("{} area{} without a unit left out", without_unit,
                                        without_unit == 1 ? "" : "s"));
  }
  return found;
}

}  // namespace sweepwright::formats
