#include "sweepwright/formats/plan_json.hpp"

#include <nlohmann/json.hpp>

#include "formats/finding_json.hpp"
#include "formats/working_json.hpp"
#include "sweepwright/formats/flown_pattern_writer.hpp"
#include "sweepwright/formats/pattern_writer.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::ordered_json;

ordered_json place(Position position) {
  return {position.longitude().degrees(), position.latitude().degrees()};
}

ordered_json named_place(const plan::NamedPlace& named) {
  return {{"name", named.name}, {"position", place(named.position)}};
}

ordered_json corners(const Region& region) {
  ordered_json polygons = ordered_json::array();
  for (const Polygon& polygon : region.polygons) {
    ordered_json ring = ordered_json::array();
    for (const Position& corner : polygon.outer) ring.push_back(place(corner));
    polygons.push_back(ring);
  }
  return polygons;
}

ordered_json cell_names(const std::vector<grid::Cell>& cells) {
  ordered_json names = ordered_json::array();
  for (const grid::Cell& cell : cells) names.push_back(cell.name);
  return names;
}

ordered_json transit_json(const plan::Transit& transit) {
  return {{"true_track_deg", transit.line.start_track.degrees()},
          {"distance_m", transit.line.length.metres()},
          {"time_s", transit.time.count()}};
}

/// null where there is no belief.
ordered_json probability(const std::optional<sweep::Probability>& probability) {
  return probability ? ordered_json(probability->value()) : ordered_json();
}

ordered_json success(const plan::Assignment& assignment) {
  if (!assignment.probability_of_containment) return {};
  return assignment.probability_of_containment->value() *
         assignment.probability_of_detection.value();
}

/// The pattern as flown, as `pattern` writes it.
ordered_json flown_json(const plan::Assignment& assignment) {
  const plan::SearchUnit& unit = assignment.unit;
  FlownReport report{.pattern = assignment.pattern,
                     .aircraft = plan::aircraft(unit),
                     .flown = assignment.flown,
                     .departure_is_known = true,
                     .limits = {},
                     .endurance = assignment.endurance_use,
                     .light = assignment.light};
  if (unit.time_away) report.limits = {unit.time_away->endurance, unit.time_away->reserve};
  StringSink sink;
  write_flown_pattern(sink, report, PatternFormat::json, {});
  ordered_json json = ordered_json::parse(sink.text());
  json.erase("provenance");  // the plan's own says it
  return json;
}

ordered_json assignment_json(const plan::Mission& mission, const plan::Assignment& assignment) {
  const plan::SearchUnit& unit = assignment.unit;
  return {
      {"callsign", unit.callsign},
      {"platform", sweep::name(unit.platform)},
      {"sector", assignment.sector_name},
      {"sector_area_m2", area(assignment.sector).square_metres()},
      {"sector_corners", corners(assignment.sector)},
      {"cells", cell_names(assignment.cells)},
      {"search_speed_mps", unit.search_speed.metres_per_second()},
      {"on_scene_endurance_s", assignment.on_scene_endurance.count()},
      {"search_time_s", assignment.search_time.count()},
      {"sweep_width_m", assignment.sweep_width.width.metres()},
      {"sweep_width_working", working_json(assignment.sweep_width.working)},
      {"spacing_m", assignment.spacing.metres()},
      {"coverage", assignment.coverage.value()},
      {"searched_share", assignment.searched_share},
      {"probability_of_detection", assignment.probability_of_detection.value()},
      {"probability_of_containment", probability(assignment.probability_of_containment)},
      {"probability_of_success", success(assignment)},
      {"base", named_place(unit.base)},
      {"way_out", transit_json(assignment.way_out)},
      {"way_back", transit_json(assignment.way_back)},
      {"depart", format_utc(assignment.flown.depart)},
      {"pattern_time_s", assignment.pattern_time.count()},
      {"total_time_s", assignment.flown.total_time.count()},
      {"total_distance_m", assignment.flown.total_distance.metres()},
      {"flown", flown_json(assignment)},
      {"pattern_reason", assignment.pattern_reason},
      {"pattern", ordered_json::parse(pattern_json(assignment.pattern, unit.search_speed).text)},
      {"terrain", terrain_value(mission, assignment)},
      {"findings", findings_value(assignment.findings)},
      {"remarks", assignment.remarks}};
}

ordered_json belief_json(const plan::PlanBelief& belief) {
  const double bound = belief.bound.value();
  const double success = belief.probability_of_success.value();
  return {{"cells", belief.belief.cells.size()},
          {"outside", belief.belief.outside},
          {"probability_of_containment", belief.probability_of_containment.value()},
          {"probability_of_success", success},
          {"bound", bound},
          {"ratio", bound > 0 ? success / bound : 0.0}};
}

}  // namespace

std::string plan_json(const plan::Plan& plan, const Provenance& provenance) {
  const plan::Mission& mission = plan.mission;
  ordered_json json{{"incident", mission.incident.name},
                    {"operational_period",
                     {{"from", format_utc(mission.incident.operational_period.from)},
                      {"to", format_utc(mission.incident.operational_period.to)}}},
                    {"search_object", mission.object.table_name},
                    {"grid", {{"system", mission.grid.system}, {"level", mission.grid.level}}},
                    {"area_m2", plan.searched.square_metres()},
                    {"effort_m2", plan.effort.square_metres()},
                    {"coverage_wanted", plan.coverage_wanted.value()},
                    {"coverage_planned", plan.coverage_planned.value()},
                    {"detection_law", sweep::name(mission.detection_law)},
                    {"probability_of_detection", plan.probability_of_detection.value()},
                    {"cells", cell_names(plan.cells)},
                    {"assignments", ordered_json::array()},
                    {"findings", findings_value(plan.findings)},
                    {"remarks", plan.remarks},
                    {"provenance", ordered_json::parse(provenance_json(provenance).text)}};
  if (mission.datum) json["datum"] = named_place(*mission.datum);
  if (plan.belief) json["belief"] = belief_json(*plan.belief);
  for (const plan::Assignment& assignment : plan.assignments) {
    json["assignments"].push_back(assignment_json(mission, assignment));
  }
  return json.dump(2) + "\n";
}

}  // namespace sweepwright::formats
