#include "sweepwright/formats/flown_pattern_writer.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "formats/flown_legs.hpp"
#include "formats/flown_light.hpp"
#include "formats/pattern_features.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/csv_writer.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/gpx_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

using flight::FlownLegPath;
using nlohmann::ordered_json;

ordered_json place(Position position) {
  return {position.longitude().degrees(), position.latitude().degrees()};
}

ordered_json object(const std::vector<Property>& properties) {
  ordered_json json = ordered_json::object();
  for (const Property& property : properties) {
    json[property.name] = ordered_json::parse(to_json(property.value));
  }
  return json;
}

std::string title(const FlownReport& report) {
  return pattern::search_title(report.pattern.kind) + " as flown";
}

/// A name for each leg: `Leg 3`, `Transit 1`.
std::string leg_name(const FlownReport& report, std::size_t i) {
  return fmt::format("{} {}", report.flown.legs[i].searching ? "Leg" : "Transit", i + 1);
}

void write_geojson(Sink& sink, const FlownReport& report, const Provenance& provenance) {
  const std::vector<Property> members{{"provenance", provenance_json(provenance)}};
  GeoJsonWriter writer(sink, members);
  const std::vector<FlownLegPath> paths = flown_paths(report.flown);
  for (std::size_t i = 0; i < paths.size(); ++i) {
    std::vector<Property> properties{{"name", leg_name(report, i)}};
    for (Property& property : flown_leg_properties(report, i)) {
      properties.push_back(std::move(property));
    }
    writer.feature(places(paths[i].straight), properties);
    if (paths[i].turn.empty()) continue;
    std::vector<Property> turn{{"name", fmt::format("Turn {}", i + 1)},
                               {"kind", std::string("turn")},
                               {"number", static_cast<std::int64_t>(i + 1)}};
    for (Property& property : turn_properties(*report.flown.legs[i].turn)) {
      turn.push_back(std::move(property));
    }
    writer.feature(places(paths[i].turn), turn);
  }
  writer.feature(commence_search_point(report.pattern),
                 std::vector<Property>{{"name", std::string(kCommenceSearchPoint)}});
  write_guides(writer, report.pattern);
  writer.finish();
}

void write_kml(Sink& sink, const FlownReport& report, const Provenance& provenance) {
  KmlWriter writer(sink, {.name = title(report),
                          .description = provenance_text(provenance),
                          .styles = pattern_styles("pattern", Colour{0, 60, 120})});
  const Position start = commence_search_point(report.pattern);
  writer.placemark({.name = std::string(kCommenceSearchPoint),
                    .description = format_position(start),
                    .time = {},
                    .style_id = "pattern-start",
                    .properties = {},
                    .geometry = start});
  const std::vector<FlownLegPath> paths = flown_paths(report.flown);
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const bool search = report.flown.legs[i].leg.kind == pattern::LegKind::search;
    writer.placemark({.name = leg_name(report, i),
                      .description = flown_leg_text(report, i),
                      .time = {},
                      .style_id = search ? "pattern-search" : "pattern-joint",
                      .properties = {},
                      .geometry = places(paths[i].straight)});
    if (paths[i].turn.empty()) continue;
    writer.placemark({.name = fmt::format("Turn {}", i + 1),
                      .description = {},
                      .time = {},
                      .style_id = "pattern-joint",
                      .properties = {},
                      .geometry = places(paths[i].turn)});
  }
  write_guides(writer, report.pattern, "pattern");
  writer.finish();
}

/// Where each straight part begins and ends: what a crew steers by.
std::vector<GpxPoint> route(const FlownReport& report) {
  std::vector<GpxPoint> points;
  const std::vector<FlownLegPath> paths = flown_paths(report.flown);
  for (std::size_t i = 0; i < paths.size(); ++i) {
    points.push_back({paths[i].straight.front().position, fmt::format("L{:02}A", i + 1),
                      flown_leg_text(report, i), ""});
    points.push_back({paths[i].straight.back().position, fmt::format("L{:02}B", i + 1),
                      fmt::format("End of leg {} at {}", i + 1,
                                  time_text(report, paths[i].straight.back().time)),
                      ""});
  }
  return points;
}

std::vector<GpxPoint> flown_way(const FlownReport& report) {
  std::vector<GpxPoint> points;
  for (const Position& position : whole_path(report.flown))
    points.push_back({position, "", "", ""});
  return points;
}

void write_gpx_routes(Sink& sink, const FlownReport& report, const Provenance& provenance) {
  GpxDocument document;
  document.creator = creator(provenance);
  document.name = title(report);
  document.description = provenance_text(provenance);
  document.time = provenance.stamp;
  document.routes.push_back({document.name, "", route(report)});
  document.routes.push_back({"Path over the ground, turns included", "", flown_way(report)});
  formats::write_gpx(sink, document);
}

void write_csv(Sink& sink, const FlownReport& report) {
  std::vector<std::string> columns;
  const auto add_columns = [&](const std::vector<Property>& properties, std::string_view before) {
    for (const Property& property : properties) {
      columns.push_back(fmt::format("{}{}", before, property.name));
    }
  };
  add_columns(flown_leg_properties(report, 0), "");
  add_columns(turn_properties({}), "turn_");
  columns.insert(columns.end(), {"from", "to"});
  CsvWriter writer(sink, columns);
  const std::vector<FlownLegPath> paths = flown_paths(report.flown);
  for (std::size_t i = 0; i < paths.size(); ++i) {
    std::vector<PropertyValue> row;
    for (Property& property : flown_leg_properties(report, i)) {
      row.push_back(std::move(property.value));
    }
    const std::optional<flight::FlownTurn>& turn = report.flown.legs[i].turn;
    for (Property& property : turn_properties(turn.value_or(flight::FlownTurn()))) {
      row.push_back(turn ? std::move(property.value) : PropertyValue());
    }
    row.emplace_back(format_position(paths[i].straight.front().position));
    row.emplace_back(format_position(paths[i].straight.back().position));
    writer.row(row);
  }
}

ordered_json legs_json(const FlownReport& report) {
  ordered_json legs = ordered_json::array();
  const std::vector<FlownLegPath> paths = flown_paths(report.flown);
  for (std::size_t i = 0; i < paths.size(); ++i) {
    ordered_json leg = object(flown_leg_properties(report, i));
    leg["from"] = place(paths[i].straight.front().position);
    leg["to"] = place(paths[i].straight.back().position);
    if (const auto& turn = report.flown.legs[i].turn) leg["turn"] = object(turn_properties(*turn));
    legs.push_back(std::move(leg));
  }
  return legs;
}

ordered_json endurance_json(const FlownReport& report) {
  const flight::EnduranceUse& use = *report.endurance;
  ordered_json json{{"endurance_s", report.limits->endurance.count()},
                    {"reserve_s", report.limits->reserve.count()},
                    {"needed_s", use.needed.count()},
                    {"spare_s", use.spare.count()},
                    {"enough", use.is_enough()},
                    {"search_legs", use.search_legs},
                    {"search_legs_flown", use.search_legs_flown}};
  if (use.bingo) {
    json["bingo_s"] = use.bingo->count();
    if (report.departure_is_known) json["bingo_time"] = time_text(report, *use.bingo);
  }
  return json;
}

ordered_json to_ordered_json(const FlownReport& report) {
  const flight::FlownPattern& flown = report.flown;
  ordered_json json{{"kind", pattern::info(report.pattern.kind).name},
                    {"designator", pattern::info(report.pattern.kind).designator},
                    {"spacing_m", report.pattern.spacing.metres()},
                    {"true_airspeed_mps", report.aircraft.true_airspeed.metres_per_second()},
                    {"commence_search_point", place(commence_search_point(report.pattern))},
                    {"search_legs", search_leg_count(report.pattern)},
                    {"legs", legs_json(report)},
                    {"search_distance_m", search_distance(report.pattern).metres()},
                    {"total_distance_m", flown.total_distance.metres()},
                    {"total_time_s", flown.total_time.count()},
                    {"on_scene_time_s", (flown.search_end - flown.arrival).count()}};
  if (report.departure_is_known) {
    json["depart_time"] = time_text(report, {});
    json["arrival_time"] = time_text(report, flown.arrival);
    json["search_end_time"] = time_text(report, flown.search_end);
    json["end_time"] = time_text(report, flown.total_time);
  }
  if (const auto& flow = report.aircraft.fuel_flow) {
    json[fmt::format("fuel_{}", flight::key(flow->unit))] = (*flow * flown.total_time).amount;
  }
  if (flown.variation) json["variation"] = magnetic::format_variation(*flown.variation);
  if (flown.skipped_rows > 0) json["skipped_rows"] = flown.skipped_rows;
  if (report.endurance) json["endurance"] = endurance_json(report);
  if (report.light) json["daylight"] = light_json(*report.light);
  json["remarks"] = flown_remarks(report);
  return json;
}

std::vector<std::string> endurance_remarks(const FlownReport& report) {
  const flight::EnduranceUse& use = *report.endurance;
  const std::string flight = format_duration(report.flown.total_time);
  const std::string reserve = format_duration(report.limits->reserve);
  if (use.is_enough()) {
    return {fmt::format("the flight takes {} and leaves {} beyond the reserve of {}", flight,
                        format_duration(use.spare), reserve)};
  }
  return {fmt::format("the endurance of {} is {} short: the flight takes {} and the reserve is {}",
                      format_duration(report.limits->endurance), format_duration(-use.spare),
                      flight, reserve),
          use.bingo
              ? fmt::format("leave for the base at {} at the latest, on leg {}: {} of {} search "
                            "legs can be ended",
                            time_text(report, *use.bingo), use.short_of.value_or(1),
                            use.search_legs_flown, use.search_legs)
              : "the crew cannot reach the commence search point and return with its reserve"};
}

}  // namespace

std::vector<std::string> flown_remarks(const FlownReport& report) {
  std::vector<std::string> remarks = report.pattern.remarks;
  const auto add = [&](const std::vector<std::string>& more) {
    remarks.insert(remarks.end(), more.begin(), more.end());
  };
  add(report.flown.remarks);
  if (report.light) add(light_remarks(*report.light));
  if (report.endurance) add(endurance_remarks(report));
  return remarks;
}

void write_flown_pattern(Sink& sink, const FlownReport& report, PatternFormat format,
                         const Provenance& provenance) {
  switch (format) {
    case PatternFormat::geojson:
      return write_geojson(sink, report, provenance);
    case PatternFormat::kml:
      return write_kml(sink, report, provenance);
    case PatternFormat::gpx:
      return write_gpx_routes(sink, report, provenance);
    case PatternFormat::csv:
      return write_csv(sink, report);
    case PatternFormat::json: {
      ordered_json json = to_ordered_json(report);
      json["provenance"] = ordered_json::parse(provenance_json(provenance).text);
      sink.write(json.dump(2) + "\n");
      return;
    }
  }
}

}  // namespace sweepwright::formats
