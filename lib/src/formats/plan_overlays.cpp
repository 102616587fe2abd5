#include "sweepwright/formats/plan_overlays.hpp"

#include <fmt/format.h>

#include "formats/pattern_features.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/findings.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

constexpr Colour kAreaColour{0, 0, 0};
constexpr Colour kGridColour{110, 110, 110};
constexpr std::uint8_t kSectorOpacity = 40;

std::string area_name(const plan::Plan& plan) {
  return plan.mission.area_name.empty() ? "Search area" : plan.mission.area_name;
}

std::string crew_title(const plan::Assignment& assignment) {
  return fmt::format("{} sector {}", assignment.unit.callsign, assignment.sector_name);
}

/// The styles of one crew share this id.
std::string crew_style_id(const plan::Assignment& assignment) {
  return "crew-" + assignment.sector_name;
}

std::string sector_text(const plan::Assignment& assignment) {
  return fmt::format(
      "{}: {} search, track spacing {}, {} search legs, {} of {} search time, probability of "
      "detection {:.0f} %",
      assignment.unit.callsign, pattern::info(assignment.pattern.kind).title,
      format_length(assignment.spacing, LengthUnit::nautical_mile, 2),
      search_leg_count(assignment.pattern), format_duration_minutes(assignment.pattern_time),
      format_duration_minutes(assignment.search_time),
      100 * assignment.probability_of_detection.value());
}

std::vector<Property> sector_properties(const plan::Assignment& assignment) {
  return {{"part", std::string("sector")},
          {"name", assignment.sector_name},
          {"callsign", assignment.unit.callsign},
          {"area_km2", area(assignment.sector).square_kilometres()},
          {"sweep_width_m", assignment.sweep_width.width.metres()},
          {"spacing_m", assignment.spacing.metres()},
          {"coverage", assignment.coverage.value()},
          {"probability_of_detection", assignment.probability_of_detection.value()}};
}

std::vector<KmlStyle> styles(const plan::Plan& plan) {
  std::vector<KmlStyle> all{{.id = "area", .line = kAreaColour, .line_width_pixels = 4, .fill = {}},
                            {.id = "cell", .line = kGridColour, .line_width_pixels = 1, .fill = {}},
                            {.id = "place", .line = kAreaColour, .fill = {}}};
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    const Colour colour = crew_style(i).colour;
    const std::string id = crew_style_id(plan.assignments[i]);
    all.push_back({.id = id,
                   .line = colour,
                   .line_width_pixels = 3,
                   .fill = Colour{colour.red, colour.green, colour.blue, kSectorOpacity}});
    for (const KmlStyle& style : pattern_styles(id, colour)) all.push_back(style);
  }
  return all;
}

Placemark plain_placemark(std::string name, std::string description, std::string style,
                          Geometry geometry) {
  return {.name = std::move(name),
          .description = std::move(description),
          .time = {},
          .style_id = std::move(style),
          .properties = {},
          .geometry = std::move(geometry)};
}

void write_kml_grid(KmlWriter& writer, const plan::Plan& plan) {
  writer.open_folder("Grid",
                     fmt::format("{} {}", plan.mission.grid.system, plan.mission.grid.level));
  for (const grid::Cell& cell : plan.cells) {
    Geometry ground = cell.region;
    if (cell.box) ground = *cell.box;
    writer.placemark(plain_placemark(cell.name, "", "cell", std::move(ground)));
  }
  writer.close_folder();
}

void write_kml_crew(KmlWriter& writer, const plan::Assignment& assignment) {
  writer.open_folder(crew_title(assignment), sector_text(assignment));
  const plan::NamedPlace& base = assignment.unit.base;
  writer.placemark(
      plain_placemark(base.name, "Base of " + assignment.unit.callsign, "place", base.position));
  write_pattern_folder(writer, assignment.pattern, assignment.unit.search_speed,
                       crew_style_id(assignment));
  writer.close_folder();
}

/// `MUST NOT FLY, terrain, A2 Lark 34`
std::string finding_name(const hazard::Finding& finding) {
  std::string name =
      fmt::format("{}, {}", severity_label(finding.severity), hazard::name(finding.kind));
  if (!finding.crew.empty()) name += fmt::format(", {} {}", finding.sector, finding.crew);
  return name;
}

/// The findings that have a place.
void write_kml_findings(KmlWriter& writer, const plan::Plan& plan) {
  writer.open_folder("Findings of the checks");
  for (const hazard::Finding& finding : plan.findings) {
    if (!finding.where) continue;
    writer.placemark(
        plain_placemark(finding_name(finding), finding_text(finding), "place", *finding.where));
  }
  writer.close_folder();
}

std::vector<Property> finding_properties(const hazard::Finding& finding) {
  return {{"part", std::string("finding")},
          {"name", finding_name(finding)},
          {"severity", std::string(hazard::name(finding.severity))},
          {"kind", std::string(hazard::name(finding.kind))},
          {"callsign", finding.crew},
          {"sector", finding.sector},
          {"text", finding_text(finding)}};
}

}  // namespace

void write_plan_kml(Sink& sink, const plan::Plan& plan, const Provenance& provenance) {
  KmlWriter writer(sink, {.name = plan.mission.incident.name,
                          .description = provenance_text(provenance),
                          .styles = styles(plan)});
  writer.open_folder("Search area");
  writer.placemark(plain_placemark(area_name(plan), "", "area", plan.area));
  if (plan.mission.datum) {
    writer.placemark(
        plain_placemark(plan.mission.datum->name, "Datum", "place", plan.mission.datum->position));
  }
  writer.close_folder();
  write_kml_grid(writer, plan);
  writer.open_folder("Sectors");
  for (const plan::Assignment& assignment : plan.assignments) {
    writer.placemark(plain_placemark(assignment.sector_name, sector_text(assignment),
                                     crew_style_id(assignment), assignment.sector));
  }
  writer.close_folder();
  for (const plan::Assignment& assignment : plan.assignments) write_kml_crew(writer, assignment);
  write_kml_findings(writer, plan);
  writer.finish();
}

void write_plan_geojson(Sink& sink, const plan::Plan& plan, const Provenance& provenance) {
  const std::vector<Property> members{{"name", plan.mission.incident.name},
                                      {"provenance", provenance_json(provenance)}};
  GeoJsonWriter writer(sink, members);
  const auto part = [](std::string_view kind, std::string name) {
    return std::vector<Property>{{"part", std::string(kind)}, {"name", std::move(name)}};
  };
  writer.feature(plan.area, part("area", area_name(plan)));
  if (plan.mission.datum) {
    writer.feature(plan.mission.datum->position, part("datum", plan.mission.datum->name));
  }
  for (const grid::Cell& cell : plan.cells) {
    std::vector<Property> properties = part("cell", cell.name);
    properties.push_back({"cell", cell.name});
    properties.push_back({"system", std::string(cell.system)});
    properties.push_back({"level", std::string(cell.level.name)});
    Geometry ground = cell.region;
    if (cell.box) ground = *cell.box;
    writer.feature(ground, properties);
  }
  for (const plan::Assignment& assignment : plan.assignments) {
    writer.feature(assignment.sector, sector_properties(assignment));
    const auto of_crew = [&](std::vector<Property> properties) {
      properties.push_back({"callsign", assignment.unit.callsign});
      properties.push_back({"sector", assignment.sector_name});
      return properties;
    };
    writer.feature(assignment.unit.base.position, of_crew(part("base", assignment.unit.base.name)));
    writer.feature(commence_search_point(assignment.pattern),
                   of_crew(part("commence-search-point", std::string(kCommenceSearchPoint))));
    for (const LegRow& row : leg_rows(assignment.pattern, assignment.unit.search_speed)) {
      std::vector<Property> properties = of_crew(leg_properties(row));
      properties.insert(properties.begin(), {"part", std::string("leg")});
      writer.feature(Path{row.leg.from, row.leg.to}, properties);
    }
  }
  for (const hazard::Finding& finding : plan.findings) {
    if (finding.where) writer.feature(*finding.where, finding_properties(finding));
  }
  writer.finish();
}

void write_crew_gpx(Sink& sink, const plan::Plan& plan, const plan::Assignment& assignment,
                    const Provenance& provenance) {
  GpxDocument document;
  document.creator = creator(provenance);
  document.name = fmt::format("{}: {}", plan.mission.incident.name, crew_title(assignment));
  document.description = provenance_text(provenance);
  document.time = provenance.stamp;
  const plan::NamedPlace& base = assignment.unit.base;
  const GpxPoint from_base{base.position, "BASE",
                           fmt::format("{} {}", base.name, format_position(base.position)), ""};
  GpxRoute route{crew_title(assignment), sector_text(assignment),
                 route_points(assignment.pattern, assignment.sector_name)};
  route.points.insert(route.points.begin(), from_base);
  document.waypoints.push_back(from_base);
  document.waypoints.push_back(route.points[1]);
  if (plan.mission.datum) {
    document.waypoints.push_back(
        {plan.mission.datum->position, "DATUM", plan.mission.datum->name, ""});
  }
  document.routes.push_back(std::move(route));
  write_gpx(sink, document, GpxNames::short_names);
}

}  // namespace sweepwright::formats
