#include "sweepwright/formats/cell_writer.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "sweepwright/formats/csv_writer.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"

namespace sweepwright::formats {
namespace {

Geometry ground(const grid::Cell& cell) {
  if (cell.box) return *cell.box;
  return cell.region;
}

/// Digits beyond a centimetre, a square metre or a millionth mean nothing here.
double rounded(double value, double units) {
  return std::round(value * units) / units;
}
constexpr double kDegreeUnits = 1e7;
constexpr double kAreaUnits = 1e6;

/// Name, system and level, then whatever more the file has.
class CellProperties {
 public:
  explicit CellProperties(std::string_view name_key, const std::vector<std::string>& more)
      : properties_{{std::string(name_key), {}}, {"system", {}}, {"level", {}}} {
    for (const std::string& name : more) properties_.push_back({name, {}});
  }
  const std::vector<Property>& of(const grid::Cell& cell, std::span<const PropertyValue> more) {
    properties_[0].value = cell.name;
    properties_[1].value = std::string(cell.system);
    properties_[2].value = std::string(cell.level.name);
    std::size_t i = 3;
    for (const PropertyValue& value : more) properties_.at(i++).value = value;
    return properties_;
  }

 private:
  std::vector<Property> properties_;
};

std::vector<Property> top_members(const CellFile& file, const Provenance& provenance) {
  std::vector<Property> members{{"provenance", provenance_json(provenance)}};
  members.insert(members.end(), file.members.begin(), file.members.end());
  return members;
}

class GeoJsonCells : public CellWriter {
 public:
  GeoJsonCells(Sink& sink, const CellFile& file, const Provenance& provenance)
      : writer_(sink, top_members(file, provenance)),
        properties_("cell", file.more),
        labels_(file.labels) {}
  void cell(const grid::Cell& cell, std::span<const PropertyValue> more) override {
    writer_.feature(ground(cell), properties_.of(cell, more));
    if (labels_) writer_.feature(label_point(cell), std::array{Property{"label", cell.name}});
  }
  void finish() override { writer_.finish(); }

 private:
  GeoJsonWriter writer_;
  CellProperties properties_;
  bool labels_;
};

class KmlCells : public CellWriter {
 public:
  KmlCells(Sink& sink, const CellFile& file, const Provenance& provenance)
      : writer_(sink,
                {.name = "Grid cells",
                 .description = provenance_text(provenance),
                 .styles = {{.id = "cell", .line = {70, 70, 70}, .fill = {}},
                            {.id = "label", .line = {70, 70, 70}, .fill = {}, .icon_scale = 0}}}),
        properties_("cell", file.more),
        labels_(file.labels) {
    placemark_.style_id = "cell";
    label_.style_id = "label";
  }
  void cell(const grid::Cell& cell, std::span<const PropertyValue> more) override {
    placemark_.name = cell.name;
    placemark_.properties = properties_.of(cell, more);
    placemark_.geometry = ground(cell);
    writer_.placemark(placemark_);
    if (!labels_) return;
    label_.name = cell.name;
    label_.geometry = label_point(cell);
    writer_.placemark(label_);
  }
  void finish() override { writer_.finish(); }

 private:
  KmlWriter writer_;
  CellProperties properties_;
  Placemark placemark_;
  Placemark label_;
  bool labels_;
};

/// The four limits of a cell between parallels and meridians; nothing for other cells.
std::array<PropertyValue, 4> limits(const grid::Cell& cell) {
  if (!cell.box) return {};
  return {cell.box->south.degrees(), cell.box->west.degrees(), cell.box->north.degrees(),
          cell.box->east.degrees()};
}

constexpr std::array<std::string_view, 4> kLimitNames{"south_deg", "west_deg", "north_deg",
                                                      "east_deg"};

class CsvCells : public CellWriter {
 public:
  CsvCells(Sink& sink, const CellFile& file) : writer_(sink, columns(file)) {}
  void cell(const grid::Cell& cell, std::span<const PropertyValue> more) override {
    const Position label = label_point(cell);
    std::vector<PropertyValue> row{cell.name, std::string(cell.system),
                                   std::string(cell.level.name)};
    for (PropertyValue& edge : limits(cell)) row.push_back(std::move(edge));
    row.insert(row.end(), {rounded(label.latitude().degrees(), kDegreeUnits),
                           rounded(label.longitude().degrees(), kDegreeUnits),
                           rounded(area(cell).square_kilometres(), kAreaUnits),
                           rounded(area(cell).square_nautical_miles(), kAreaUnits)});
    row.insert(row.end(), more.begin(), more.end());
    writer_.row(row);
  }
  void finish() override {}

 private:
  static std::vector<std::string> columns(const CellFile& file) {
    std::vector<std::string> names{"cell", "system", "level"};
    names.insert(names.end(), kLimitNames.begin(), kLimitNames.end());
    names.insert(names.end(),
                 {"centre_latitude_deg", "centre_longitude_deg", "area_km2", "area_nm2"});
    names.insert(names.end(), file.more.begin(), file.more.end());
    return names;
  }
  CsvWriter writer_;
};

class JsonCells : public CellWriter {
 public:
  JsonCells(Sink& sink, const CellFile& file, const Provenance& provenance)
      : sink_(sink), more_names_(file.more) {
    std::string text = "{";
    for (const Property& member : top_members(file, provenance)) {
      text += fmt::format("\n  {}: {},", to_json(member.name), to_json(member.value));
    }
    sink_.write(text + "\n  \"cells\": [");
  }
  void cell(const grid::Cell& cell, std::span<const PropertyValue> more) override {
    std::string text = first_ ? "\n    {" : ",\n    {";
    first_ = false;
    text += fmt::format(R"("cell": {}, "system": {}, "level": {})", to_json(cell.name),
                        to_json(std::string(cell.system)), to_json(std::string(cell.level.name)));
    const std::array<PropertyValue, 4> edges = limits(cell);
    for (std::size_t i = 0; cell.box && i < edges.size(); ++i) {
      text += fmt::format(", \"{}\": {}", kLimitNames[i], to_json(edges[i]));
    }
    const Position label = label_point(cell);
    text += fmt::format(R"(, "centre": [{}, {}], "area_km2": {}, "area_nm2": {})",
                        to_json(rounded(label.longitude().degrees(), kDegreeUnits)),
                        to_json(rounded(label.latitude().degrees(), kDegreeUnits)),
                        to_json(rounded(area(cell).square_kilometres(), kAreaUnits)),
                        to_json(rounded(area(cell).square_nautical_miles(), kAreaUnits)));
    for (std::size_t i = 0; i < more.size(); ++i) {
      text += fmt::format(", {}: {}", to_json(more_names_.at(i)), to_json(more[i]));
    }
    sink_.write(text + "}");
  }
  void finish() override { sink_.write(first_ ? "]\n}\n" : "\n  ]\n}\n"); }

 private:
  Sink& sink_;
  std::vector<std::string> more_names_;
  bool first_ = true;
};

}  // namespace

std::unique_ptr<CellWriter> make_cell_writer(Sink& sink, const CellFile& file,
                                             const Provenance& provenance) {
  switch (file.format) {
    case CellFormat::geojson:
      return std::make_unique<GeoJsonCells>(sink, file, provenance);
    case CellFormat::kml:
      return std::make_unique<KmlCells>(sink, file, provenance);
    case CellFormat::csv:
      return std::make_unique<CsvCells>(sink, file);
    case CellFormat::json:
      return std::make_unique<JsonCells>(sink, file, provenance);
  }
  return nullptr;
}

}  // namespace sweepwright::formats
