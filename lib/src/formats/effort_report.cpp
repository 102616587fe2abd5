#include "sweepwright/formats/effort_report.hpp"

#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

#include "formats/working_json.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/cell_writer.hpp"
#include "sweepwright/formats/csv_writer.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::formats {
namespace {

double whole_metres(Area area) {
  return std::round(area.square_metres());
}

/// Digits beyond a tenth of a metre, second or degree mean nothing to a crew.
double tenths(double value) {
  return std::round(value * 10) / 10;
}

nlohmann::ordered_json units_json(const EffortReport& report) {
  nlohmann::ordered_json units = nlohmann::ordered_json::array();
  for (const effort::Unit& unit : report.units) {
    units.push_back({{"unit", unit.callsign},
                     {"sweep_width_m", unit.sweep_width.metres()},
                     {"search_speed_mps", unit.search_speed.metres_per_second()},
                     {"on_scene_endurance_s",
                      std::round(unit.search_time.count() / sweep::kSearchShareOfOnSceneEndurance)},
                     {"search_time_s", std::round(unit.search_time.count())},
                     {"swept_per_hour_m2", whole_metres(effort::swept_per_hour(unit))},
                     {"effort_m2", whole_metres(effort::search_effort(unit))}});
  }
  return units;
}

/// What stands beside the cells or rectangles.
std::vector<Property> members(const EffortReport& report) {
  std::vector<Property> all;
  if (report.plan) {
    all = {{"pos", report.plan->pos.value()},
           {"bound", report.plan->bound.value()},
           {"ratio", report.plan->ratio}};
  } else {
    all = {{"pos", report.allocation.pos.value()},
           {"bound", report.allocation.pos.value()},
           {"threshold_per_m2", report.allocation.threshold_per_m2},
           {"outside", report.belief.outside}};
  }
  if (report.wanted_pos) all.push_back({"wanted_pos", report.wanted_pos->value()});
  all.push_back({"effort_m2", whole_metres(effort::total_effort(report.units))});
  all.push_back({"detection_law", std::string(name(sweep::DetectionLaw::exponential))});
  all.push_back({"units", RawJson{units_json(report).dump()}});
  all.push_back({"working", RawJson{working_json(effort_working(report)).dump()}});
  return all;
}

const std::vector<std::string> kCellColumns{"probability", "area_m2", "coverage", "pod", "pos"};

std::array<PropertyValue, 5> cell_values(const EffortReport& report, std::size_t i) {
  const double coverage = report.allocation.coverages[i];
  const double pod = -std::expm1(-coverage);
  const double probability = report.belief.probability[i];
  return {probability, whole_metres(report.belief.area[i]), coverage, pod, probability * pod};
}

std::vector<Property> rectangle_properties(const EffortReport& report, std::size_t i) {
  const effort::Assignment& made = report.plan->assignments[i];
  return {{"unit", report.units[i].callsign},
          {"coverage", made.coverage.value()},
          {"poc", made.poc.value()},
          {"pod", made.pod.value()},
          {"pos", made.pos.value()},
          {"area_m2", whole_metres(made.area)},
          {"effort_m2", whole_metres(made.effort)},
          {"spacing_m", tenths(made.spacing.metres())},
          {"leg_m", tenths(made.leg.metres())},
          {"leg_direction_true_deg", tenths(made.leg_direction.degrees())},
          {"search_time_s", std::round(made.search_time.count())}};
}

void write_rectangles_csv(Sink& sink, const EffortReport& report) {
  std::optional<CsvWriter> writer;
  for (std::size_t i = 0; i < report.units.size(); ++i) {
    std::vector<std::string> columns;
    std::vector<PropertyValue> row;
    for (Property& property : rectangle_properties(report, i)) {
      columns.push_back(std::move(property.name));
      row.push_back(std::move(property.value));
    }
    if (!writer) writer.emplace(sink, columns);
    writer->row(row);
  }
}

void write_rectangles_geojson(Sink& sink, const EffortReport& report,
                              const Provenance& provenance) {
  std::vector<Property> top = members(report);
  top.insert(top.begin(), {"provenance", provenance_json(provenance)});
  GeoJsonWriter writer(sink, top);
  for (std::size_t i = 0; i < report.units.size(); ++i) {
    writer.feature(report.plan->assignments[i].region, rectangle_properties(report, i));
  }
  writer.finish();
}

void write_rectangles_json(Sink& sink, const EffortReport& report, const Provenance& provenance) {
  nlohmann::ordered_json json;
  json["provenance"] = nlohmann::ordered_json::parse(provenance_json(provenance).text);
  for (const Property& member : members(report)) {
    json[member.name] = nlohmann::ordered_json::parse(to_json(member.value));
  }
  json["rectangles"] = nlohmann::ordered_json::array();
  for (std::size_t i = 0; i < report.units.size(); ++i) {
    nlohmann::ordered_json rectangle;
    for (const Property& property : rectangle_properties(report, i)) {
      rectangle[property.name] = nlohmann::ordered_json::parse(to_json(property.value));
    }
    nlohmann::ordered_json corners = nlohmann::ordered_json::array();
    for (const Position& corner : report.plan->assignments[i].region.polygons.at(0).outer) {
      constexpr double kUnits = 1e7;  // a centimetre
      corners.push_back({std::round(corner.longitude().degrees() * kUnits) / kUnits,
                         std::round(corner.latitude().degrees() * kUnits) / kUnits});
    }
    rectangle["corners"] = corners;
    json["rectangles"].push_back(rectangle);
  }
  sink.write(json.dump(2) + "\n");
}

}  // namespace

void write_effort_cells(Sink& sink, const EffortReport& report, EffortFormat format,
                        const Provenance& provenance) {
  CellFile file{.more = kCellColumns, .members = members(report)};
  if (format == EffortFormat::csv) file.format = CellFormat::csv;
  if (format == EffortFormat::json) file.format = CellFormat::json;
  const auto writer = make_cell_writer(sink, file, provenance);
  for (std::size_t i = 0; i < report.belief.cells.size(); ++i) {
    writer->cell(report.belief.cells[i], cell_values(report, i));
  }
  writer->finish();
}

void write_effort_rectangles(Sink& sink, const EffortReport& report, EffortFormat format,
                             const Provenance& provenance) {
  if (!report.plan) throw Error(ErrorCode::value, "the report has no flyable plan");
  switch (format) {
    case EffortFormat::geojson:
      return write_rectangles_geojson(sink, report, provenance);
    case EffortFormat::csv:
      return write_rectangles_csv(sink, report);
    case EffortFormat::json:
      return write_rectangles_json(sink, report, provenance);
  }
}

}  // namespace sweepwright::formats
