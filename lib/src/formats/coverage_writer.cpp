#include "sweepwright/formats/coverage_writer.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "formats/coverage_cells.hpp"
#include "formats/coverage_kml.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/csv_writer.hpp"
#include "sweepwright/formats/geojson_writer.hpp"

namespace sweepwright::formats {
namespace {

using Json = nlohmann::ordered_json;

double tenths(double value) {
  return std::round(value * 10) / 10;
}

/// The figures of the whole area, and by which rules they were had.
std::vector<Property> summary(const CoverageReport& report) {
  std::vector<Property> all{{"sweep_width_m", tenths(report.sweep_width.metres())},
                            {"detection_law", std::string(name(report.law))},
                            {"cell_m", tenths(report.map.frame.cell.metres())},
                            {"track_length_m", std::round(report.track_length.metres())}};
  for (Property& property : figure_properties(report.figures)) {
    if (property.name == "pod") property.name = "mean_pod";
    all.push_back(std::move(property));
  }
  if (report.wanted) {
    all.push_back({"hole_below_pod", report.wanted->value()});
    all.push_back({"hole_count", static_cast<std::int64_t>(report.holes.size())});
  }
  return all;
}

std::vector<Property> hole_properties(const CoverageReport& report, std::size_t i) {
  const debrief::Hole& hole = report.holes[i];
  const Position place = middle(hole.region);
  const auto degrees = [](Angle angle) { return std::round(angle.degrees() * 1e5) / 1e5; };
  return {{"hole", static_cast<std::int64_t>(i + 1)},
          {"area_m2", std::round(hole.area.square_metres())},
          {"mean_pod", std::round(hole.mean_pod * 1e5) / 1e5},
          {"least_pod", std::round(hole.least_pod * 1e5) / 1e5},
          {"middle_latitude_deg", degrees(place.latitude())},
          {"middle_longitude_deg", degrees(place.longitude())}};
}

std::vector<Property> cell_properties(const CoverageCell& cell) {
  std::vector<Property> all{{"cell", cell.name}, {"system", cell.system}, {"level", cell.level}};
  std::vector<Property> figures = figure_properties(cell.figures);
  all.insert(all.end(), figures.begin(), figures.end());
  return all;
}

void write_geojson(Sink& sink, const CoverageReport& report, const Provenance& provenance) {
  std::vector<Property> top = summary(report);
  top.insert(top.begin(), {"provenance", provenance_json(provenance)});
  GeoJsonWriter writer(sink, top);
  visit_coverage_cells(report, [&](const CoverageCell& cell) {
    writer.feature(cell.ground, cell_properties(cell));
  });
  for (std::size_t i = 0; i < report.holes.size(); ++i) {
    writer.feature(report.holes[i].region, hole_properties(report, i));
  }
  writer.finish();
}

void write_csv(Sink& sink, const CoverageReport& report) {
  std::optional<CsvWriter> writer;
  visit_coverage_cells(report, [&](const CoverageCell& cell) {
    std::vector<std::string> columns;
    std::vector<PropertyValue> row;
    for (Property& property : cell_properties(cell)) {
      columns.push_back(std::move(property.name));
      row.push_back(std::move(property.value));
    }
    if (!writer) writer.emplace(sink, columns);
    writer->row(row);
  });
}

Json to_object(const std::vector<Property>& properties) {
  Json object = Json::object();
  for (const Property& property : properties) {
    object[property.name] = Json::parse(to_json(property.value));
  }
  return object;
}

/// GeoJSON's geometry of an area, as its own writer writes it.
Json geometry_json(const Region& region) {
  StringSink text;
  GeoJsonWriter writer(text);
  writer.feature(region, {});
  writer.finish();
  return Json::parse(text.text()).at("features").at(0).at("geometry");
}

void write_json(Sink& sink, const CoverageReport& report, const Provenance& provenance) {
  Json json;
  json["provenance"] = Json::parse(provenance_json(provenance).text);
  json.update(to_object(summary(report)));
  json["holes"] = Json::array();
  for (std::size_t i = 0; i < report.holes.size(); ++i) {
    Json hole = to_object(hole_properties(report, i));
    hole["geometry"] = geometry_json(report.holes[i].region);
    json["holes"].push_back(std::move(hole));
  }
  if (!report.named.empty()) {
    json["cells"] = Json::array();
    visit_coverage_cells(report, [&](const CoverageCell& cell) {
      json["cells"].push_back(to_object(cell_properties(cell)));
    });
  }
  sink.write(json.dump(2) + "\n");
}

}  // namespace

void write_coverage(Sink& sink, const CoverageReport& report, CoverageFormat format,
                    const Provenance& provenance) {
  switch (format) {
    case CoverageFormat::geojson:
      return write_geojson(sink, report, provenance);
    case CoverageFormat::csv:
      return write_csv(sink, report);
    case CoverageFormat::kml:
      return write_coverage_kml(sink, report, provenance);
    case CoverageFormat::json:
      return write_json(sink, report, provenance);
  }
}

}  // namespace sweepwright::formats
