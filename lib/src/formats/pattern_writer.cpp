#include "sweepwright/formats/pattern_writer.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "formats/pattern_features.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/csv_writer.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/gpx_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::ordered_json;

ordered_json place(Position position) {
  return {position.longitude().degrees(), position.latitude().degrees()};
}

void write_geojson(Sink& sink, const pattern::Pattern& pattern, Speed speed,
                   const Provenance& provenance) {
  const std::vector<Property> members{{"provenance", provenance_json(provenance)}};
  GeoJsonWriter writer(sink, members);
  for (const LegRow& row : leg_rows(pattern, speed)) {
    writer.feature(Path{row.leg.from, row.leg.to}, leg_properties(row));
  }
  writer.feature(commence_search_point(pattern),
                 std::vector<Property>{{"name", std::string(kCommenceSearchPoint)}});
  write_guides(writer, pattern);
  writer.finish();
}

void write_kml(Sink& sink, const pattern::Pattern& pattern, Speed speed,
               const Provenance& provenance) {
  KmlWriter writer(sink, {.name = pattern::search_title(pattern.kind),
                          .description = provenance_text(provenance),
                          .styles = pattern_styles("pattern", Colour{0, 60, 120})});
  write_pattern_folder(writer, pattern, speed, "pattern");
  writer.finish();
}

void write_gpx_route(Sink& sink, const pattern::Pattern& pattern, const Provenance& provenance) {
  GpxDocument document;
  document.creator = creator(provenance);
  document.name = pattern::search_title(pattern.kind);
  document.description = provenance_text(provenance);
  document.time = provenance.stamp;
  document.routes.push_back({document.name, "", route_points(pattern, "")});
  formats::write_gpx(sink, document);
}

void write_csv(Sink& sink, const pattern::Pattern& pattern, Speed speed) {
  const std::vector<std::string> columns{"leg",
                                         "kind",
                                         "from_latitude_deg",
                                         "from_longitude_deg",
                                         "to_latitude_deg",
                                         "to_longitude_deg",
                                         "true_track_deg",
                                         "distance_m",
                                         "time_s",
                                         "running_distance_m",
                                         "running_time_s",
                                         "waypoint"};
  CsvWriter writer(sink, columns);
  for (const LegRow& row : leg_rows(pattern, speed)) {
    writer.row(std::vector<PropertyValue>{
        std::int64_t{row.number}, std::string(pattern::name(row.leg.kind)),
        row.leg.from.latitude().degrees(), row.leg.from.longitude().degrees(),
        row.leg.to.latitude().degrees(), row.leg.to.longitude().degrees(),
        row.leg.line.start_track.degrees(), row.leg.line.length.metres(), row.time.count(),
        row.running_distance.metres(), row.running_time.count(), format_position(row.leg.to)});
  }
}

ordered_json legs_json(const pattern::Pattern& pattern, Speed speed) {
  ordered_json legs = ordered_json::array();
  for (const LegRow& row : leg_rows(pattern, speed)) {
    legs.push_back({{"number", row.number},
                    {"kind", pattern::name(row.leg.kind)},
                    {"from", place(row.leg.from)},
                    {"to", place(row.leg.to)},
                    {"true_track_deg", row.leg.line.start_track.degrees()},
                    {"end_true_track_deg", row.leg.line.end_track.degrees()},
                    {"distance_m", row.leg.line.length.metres()},
                    {"time_s", row.time.count()},
                    {"running_distance_m", row.running_distance.metres()},
                    {"running_time_s", row.running_time.count()}});
  }
  return legs;
}

ordered_json to_ordered_json(const pattern::Pattern& pattern, Speed speed) {
  return {{"kind", pattern::info(pattern.kind).name},
          {"designator", pattern::designator(pattern)},
          {"spacing_m", pattern.spacing.metres()},
          {"first_turn", pattern::name(pattern.first_turn)},
          {"speed_mps", speed.metres_per_second()},
          {"commence_search_point", place(commence_search_point(pattern))},
          {"search_legs", search_leg_count(pattern)},
          {"legs", legs_json(pattern, speed)},
          {"search_distance_m", search_distance(pattern).metres()},
          {"total_distance_m", total_distance(pattern).metres()},
          {"total_time_s", (total_distance(pattern) / speed).count()},
          {"remarks", pattern.remarks}};
}

}  // namespace

std::vector<LegRow> leg_rows(const pattern::Pattern& pattern, Speed speed) {
  if (!(speed.metres_per_second() > 0) || !std::isfinite(speed.metres_per_second())) {
    throw Error(ErrorCode::value, "the speed is not above 0", "give a speed such as 90kt");
  }
  std::vector<LegRow> rows;
  Length distance;
  for (const pattern::Leg& leg : pattern.legs) {
    distance += leg.line.length;
    rows.push_back({static_cast<int>(rows.size()) + 1, leg, leg.line.length / speed, distance,
                    distance / speed});
  }
  return rows;
}

RawJson pattern_json(const pattern::Pattern& pattern, Speed speed) {
  return {to_ordered_json(pattern, speed).dump()};
}

void write_pattern(Sink& sink, const pattern::Pattern& pattern, Speed speed, PatternFormat format,
                   const Provenance& provenance) {
  switch (format) {
    case PatternFormat::geojson:
      return write_geojson(sink, pattern, speed, provenance);
    case PatternFormat::kml:
      return write_kml(sink, pattern, speed, provenance);
    case PatternFormat::gpx:
      return write_gpx_route(sink, pattern, provenance);
    case PatternFormat::csv:
      return write_csv(sink, pattern, speed);
    case PatternFormat::json: {
      ordered_json json = to_ordered_json(pattern, speed);
      json["provenance"] = ordered_json::parse(provenance_json(provenance).text);
      sink.write(json.dump(2) + "\n");
      return;
    }
  }
}

}  // namespace sweepwright::formats
