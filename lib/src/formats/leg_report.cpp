#include "sweepwright/formats/leg_report.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::ordered_json;

ordered_json place(Position position) {
  return {position.longitude().degrees(), position.latitude().degrees()};
}

std::string way_text(std::string_view name, const flight::Way& way, const LegReport& report) {
  std::string text =
      fmt::format("{:<5}{} to {}\n     distance {}, bearing {} ({}), variation {}\n", name,
                  format_position(way.from), format_position(way.to),
                  format_length(way.line.length, LengthUnit::nautical_mile, 2),
                  format_direction(way.line.start_track), format_direction(way.magnetic_bearing()),
                  magnetic::format_variation(way.variation));
  if (!way.flown) return text;
  const MagneticDirection magnetic =
      magnetic::to_magnetic(way.flown->triangle.heading, way.variation);
  text += fmt::format("     heading {} ({}), ground speed {}, time {}",
                      format_direction(way.flown->triangle.heading), format_direction(magnetic),
                      format_speed(way.flown->triangle.ground_speed, SpeedUnit::knot, 0),
                      format_duration(way.flown->time));
  if (report.fuel_flow) {
    text += fmt::format(", fuel {}", format_fuel(*report.fuel_flow * way.flown->time, 1));
  }
  return text + "\n";
}

ordered_json way_json(const flight::Way& way, const LegReport& report) {
  ordered_json json{{"from", place(way.from)},
                    {"to", place(way.to)},
                    {"distance_m", way.line.length.metres()},
                    {"true_bearing_deg", way.line.start_track.degrees()},
                    {"magnetic_bearing_deg", way.magnetic_bearing().degrees()},
                    {"variation_deg", way.variation.angle.degrees()}};
  if (!way.flown) return json;
  const flight::WindTriangle& triangle = way.flown->triangle;
  json["heading_true_deg"] = triangle.heading.degrees();
  json["heading_magnetic_deg"] = magnetic::to_magnetic(triangle.heading, way.variation).degrees();
  json["wind_correction_deg"] = triangle.wind_correction.degrees();
  json["ground_speed_mps"] = triangle.ground_speed.metres_per_second();
  json["time_s"] = way.flown->time.count();
  if (report.fuel_flow) {
    const flight::Fuel fuel = *report.fuel_flow * way.flown->time;
    json[fmt::format("fuel_{}", flight::key(fuel.unit))] = fuel.amount;
  }
  return json;
}

std::vector<std::string> warnings(const LegReport& report) {
  std::vector<std::string> all = report.ways.out.variation.warnings;
  for (const std::string& warning : report.ways.back.variation.warnings) {
    if (std::find(all.begin(), all.end(), warning) == all.end()) all.push_back(warning);
  }
  return all;
}

}  // namespace

std::string leg_report_text(const LegReport& report) {
  const flight::ThereAndBack& ways = report.ways;
  std::string text = way_text("Out", ways.out, report) + way_text("Back", ways.back, report);
  if (ways.out.flown && ways.back.flown) {
    const Duration both = ways.out.flown->time + ways.back.flown->time;
    text += fmt::format("Both {}, time {}",
                        format_length(ways.out.line.length * 2, LengthUnit::nautical_mile, 2),
                        format_duration(both));
    if (report.fuel_flow) text += ", fuel " + format_fuel(*report.fuel_flow * both, 1);
    text += "\n";
  }
  for (const std::string& warning : warnings(report)) text += warning + "\n";
  for (const std::string_view caution : kCautions) text += fmt::format("{}\n", caution);
  return text;
}

std::string leg_report_json(const LegReport& report, const Provenance& provenance) {
  const magnetic::Variation& variation = report.ways.out.variation;
  ordered_json json{{"out", way_json(report.ways.out, report)},
                    {"back", way_json(report.ways.back, report)},
                    {"variation_model", variation.model},
                    {"remarks", warnings(report)},
                    {"provenance", ordered_json::parse(provenance_json(provenance).text)}};
  return json.dump(2) + "\n";
}

}  // namespace sweepwright::formats
