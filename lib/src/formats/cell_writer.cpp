#include "sweepwright/formats/cell_writer.hpp"

#include <fmt/format.h>

#include <array>

#include "sweepwright/formats/csv_writer.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"

namespace sweepwright::formats {
namespace {

Geometry ground(const grid::Cell& cell) {
  if (cell.box) return *cell.box;
  return cell.region;
}

class GeoJsonCells : public CellWriter {
 public:
  GeoJsonCells(Sink& sink, const Provenance& provenance)
      : writer_(sink, std::array{Property{"provenance", provenance_json(provenance)}}) {}
  void cell(const grid::Cell& cell) override {
    properties_[0].value = cell.name;
    properties_[1].value = std::string(cell.system);
    properties_[2].value = std::string(cell.level.name);
    writer_.feature(ground(cell), properties_);
  }
  void finish() override { writer_.finish(); }

 private:
  GeoJsonWriter writer_;
  std::array<Property, 3> properties_{{{"cell", {}}, {"system", {}}, {"level", {}}}};
};

class KmlCells : public CellWriter {
 public:
  KmlCells(Sink& sink, const Provenance& provenance)
      : writer_(sink, {.name = "Grid cells",
                       .description = provenance_text(provenance),
                       .styles = {{.id = "cell", .line = {70, 70, 70}, .fill = {}}}}) {
    placemark_.style_id = "cell";
    placemark_.properties = {{"system", {}}, {"level", {}}};
  }
  void cell(const grid::Cell& cell) override {
    placemark_.name = cell.name;
    placemark_.properties[0].value = std::string(cell.system);
    placemark_.properties[1].value = std::string(cell.level.name);
    placemark_.geometry = ground(cell);
    writer_.placemark(placemark_);
  }
  void finish() override { writer_.finish(); }

 private:
  KmlWriter writer_;
  Placemark placemark_;
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
  explicit CsvCells(Sink& sink) : writer_(sink, columns()) {}
  void cell(const grid::Cell& cell) override {
    const Position label = label_point(cell);
    const std::array<PropertyValue, 4> edges = limits(cell);
    writer_.row(std::array<PropertyValue, 10>{
        cell.name, std::string(cell.system), std::string(cell.level.name), edges[0], edges[1],
        edges[2], edges[3], label.latitude().degrees(), label.longitude().degrees(),
        area(cell).square_kilometres()});
  }
  void finish() override {}

 private:
  static std::vector<std::string> columns() {
    std::vector<std::string> names{"cell", "system", "level"};
    names.insert(names.end(), kLimitNames.begin(), kLimitNames.end());
    names.insert(names.end(), {"centre_latitude_deg", "centre_longitude_deg", "area_km2"});
    return names;
  }
  CsvWriter writer_;
};

class JsonCells : public CellWriter {
 public:
  JsonCells(Sink& sink, const Provenance& provenance) : sink_(sink) {
    sink_.write(
        fmt::format("{{\n  \"provenance\": {},\n  \"cells\": [", provenance_json(provenance).text));
  }
  void cell(const grid::Cell& cell) override {
    std::string text = first_ ? "\n    {" : ",\n    {";
    first_ = false;
    text += fmt::format(R"("cell": {}, "system": {}, "level": {})", to_json(cell.name),
                        to_json(std::string(cell.system)), to_json(std::string(cell.level.name)));
    const std::array<PropertyValue, 4> edges = limits(cell);
    for (std::size_t i = 0; cell.box && i < edges.size(); ++i) {
      text += fmt::format(", \"{}\": {}", kLimitNames[i], to_json(edges[i]));
    }
    const Position label = label_point(cell);
    text += fmt::format(R"(, "centre": [{}, {}], "area_km2": {}}})",
                        to_json(label.longitude().degrees()), to_json(label.latitude().degrees()),
                        to_json(area(cell).square_kilometres()));
    sink_.write(text);
  }
  void finish() override { sink_.write(first_ ? "]\n}\n" : "\n  ]\n}\n"); }

 private:
  Sink& sink_;
  bool first_ = true;
};

}  // namespace

std::unique_ptr<CellWriter> make_cell_writer(Sink& sink, CellFormat format,
                                             const Provenance& provenance) {
  switch (format) {
    case CellFormat::geojson:
      return std::make_unique<GeoJsonCells>(sink, provenance);
    case CellFormat::kml:
      return std::make_unique<KmlCells>(sink, provenance);
    case CellFormat::csv:
      return std::make_unique<CsvCells>(sink);
    case CellFormat::json:
      return std::make_unique<JsonCells>(sink, provenance);
  }
  return nullptr;
}

}  // namespace sweepwright::formats
