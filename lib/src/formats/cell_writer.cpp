#include "sweepwright/formats/cell_writer.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "formats/json_text.hpp"
#include "formats/xml_text.hpp"
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

/// How a format writes the properties of a cell.
struct CellSyntax {
  std::string_view before_name;  ///< the property `cell` up to its text
  void (*append_text)(std::string& out, std::string_view text);
  std::string_view after_name;
  std::string_view separator;  ///< between properties
  void (*append_property)(std::string& out, const Property& property);
};

constexpr CellSyntax kJsonSyntax{R"("cell":)", append_json_string, "", ",", append_json_member};
constexpr CellSyntax kKmlSyntax{R"(<Data name="cell"><value>)", append_xml_text, "</value></Data>",
                                "", append_kml_data};

/// Name, system and level of a cell as text, then whatever more the file has. A million cells pass
/// here: what all of a level have in common is made once.
class CellText {
 public:
  CellText(const CellSyntax& syntax, const std::vector<std::string>& more) : syntax_(syntax) {
    for (const std::string& name : more) more_.push_back({name, {}});
  }

  /// Puts the text in place of what stands in `out`.
  void write(std::string& out, const grid::Cell& cell, std::span<const PropertyValue> more) {
    if (cell.system != system_ || cell.level.name != level_) set_shared(cell);
    out = syntax_.before_name;
    syntax_.append_text(out, cell.name);
    out += shared_;
    for (std::size_t i = 0; i < more.size(); ++i) {
      Property& property = more_.at(i);
      property.value = more[i];
      out += syntax_.separator;
      syntax_.append_property(out, property);
    }
  }

 private:
  void set_shared(const grid::Cell& cell) {
    system_ = cell.system;
    level_ = cell.level.name;
    shared_ = syntax_.after_name;
    for (const Property& property : {Property{"system", system_}, Property{"level", level_}}) {
      shared_ += syntax_.separator;
      syntax_.append_property(shared_, property);
    }
  }

  CellSyntax syntax_;
  std::vector<Property> more_;
  std::string system_;
  std::string level_;
  std::string shared_;  ///< what follows the name: the rest of its property, system and level
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
        text_(kJsonSyntax, file.more),
        labels_(file.labels) {}
  void cell(const grid::Cell& cell, std::span<const PropertyValue> more) override {
    text_.write(members_, cell, more);
    writer_.feature_with_members(ground(cell), members_);
    if (labels_) writer_.feature(label_point(cell), std::array{Property{"label", cell.name}});
  }
  void finish() override { writer_.finish(); }

 private:
  GeoJsonWriter writer_;
  CellText text_;
  std::string members_;
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
        text_(kKmlSyntax, file.more),
        labels_(file.labels) {
    placemark_.style_id = "cell";
    label_.style_id = "label";
  }
  void cell(const grid::Cell& cell, std::span<const PropertyValue> more) override {
    placemark_.name = cell.name;
    text_.write(placemark_.data, cell, more);
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
  CellText text_;
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
