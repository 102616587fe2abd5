#include <nlohmann/json.hpp>

#include "sweepwright/formats/debrief_overlays.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

using nlohmann::ordered_json;

ordered_json time_json(std::optional<Instant> time) {
  if (!time) return {};
  return format_utc(std::chrono::floor<std::chrono::seconds>(*time));
}

ordered_json length_json(std::optional<Length> length) {
  return length ? ordered_json(length->metres()) : ordered_json();
}

ordered_json legs_json(const debrief::AgainstPlan& against) {
  ordered_json legs = ordered_json::array();
  for (const debrief::LegAsFlown& leg : against.legs) {
    legs.push_back({{"number", leg.number},
                    {"length_m", leg.length.metres()},
                    {"flown_share", leg.flown_share},
                    {"mean_offset_m", leg.mean_offset.metres()},
                    {"mean_error_m", leg.mean_error.metres()},
                    {"largest_error_m", leg.largest_error.metres()},
                    {"spacing_to_next_m", length_json(leg.spacing_to_next)}});
  }
  return legs;
}

ordered_json report_json(const std::optional<debrief::CrewReport>& report) {
  if (!report) return {};
  ordered_json json{
      {"own_pod", report->own_pod ? ordered_json(report->own_pod->value()) : ordered_json()},
      {"own_estimate", report->own_estimate},
      {"visibility_m", length_json(report->visibility)},
      {"height_m", length_json(report->height)},
      {"remarks", report->remarks},
      {"sightings", ordered_json::array()}};
  for (const debrief::Sighting& sighting : report->sightings) {
    ordered_json one{{"seen", sighting.seen}, {"done", sighting.done}};
    if (sighting.time) one["time"] = format_utc(*sighting.time);
    if (sighting.position) {
      one["position"] = {sighting.position->longitude().degrees(),
                         sighting.position->latitude().degrees()};
    }
    json["sightings"].push_back(std::move(one));
  }
  return json;
}

ordered_json sortie_json(const DebriefOutcome& outcome, const debrief::SortieResult& result) {
  const debrief::Sortie& sortie = result.sortie;
  const plan::Assignment& assignment = outcome.plan.assignments[sortie.input.assignment];
  ordered_json uses = ordered_json::object();
  for (int use = 0; use < debrief::kUses; ++use) {
    const debrief::UseTotal& total = sortie.totals[static_cast<std::size_t>(use)];
    uses[std::string(debrief::name(static_cast<debrief::Use>(use)))] = {
        {"time_s", total.time.count()}, {"distance_m", total.distance.metres()}};
  }
  return {{"sector", assignment.sector_name},
          {"callsign", assignment.unit.callsign},
          {"track", sortie.input.track.source},
          {"on_scene", time_json(sortie.on_scene)},
          {"off_scene", time_json(sortie.off_scene)},
          {"effort_m2", sortie.effort.square_metres()},
          {"sweep_width_planned_m", assignment.sweep_width.width.metres()},
          {"sweep_width_flown_m", sortie.mean_width.metres()},
          {"coverage", result.coverage.value()},
          {"pod_planned", result.planned_pod.value()},
          {"pod", result.pod.value()},
          {"success_share", result.success_share},
          {"uses", uses},
          {"legs_missed", result.against.missed},
          {"legs_partly", result.against.partly},
          {"mean_error_m", result.against.mean_error.metres()},
          {"largest_error_m", result.against.largest_error.metres()},
          {"spacing_planned_m", result.against.planned_spacing.metres()},
          {"spacing_flown_m", length_json(result.against.mean_spacing)},
          {"spacing_widest_m", length_json(result.against.widest_spacing)},
          {"legs", legs_json(result.against)},
          {"report", report_json(sortie.input.report)},
          {"remarks", sortie.remarks}};
}

ordered_json sectors_json(const DebriefOutcome& outcome) {
  ordered_json sectors = ordered_json::array();
  for (std::size_t i = 0; i < outcome.debriefing.sectors.size(); ++i) {
    const debrief::SectorResult& sector = outcome.debriefing.sectors[i];
    ordered_json holes = ordered_json::array();
    for (const debrief::Hole& hole : outcome.holes[i]) {
      holes.push_back({{"area_m2", hole.area.square_metres()}, {"mean_pod", hole.mean_pod}});
    }
    sectors.push_back({{"sector", outcome.plan.assignments[i].sector_name},
                       {"pod_planned", sector.planned_pod.value()},
                       {"pod", sector.pod.value()},
                       {"poc_before", sector.containment_before},
                       {"poc_after", sector.containment_after},
                       {"holes", holes}});
  }
  return sectors;
}

}  // namespace

std::string debrief_json(const DebriefOutcome& outcome, const Provenance& provenance) {
  const debrief::Debriefing& found = outcome.debriefing;
  ordered_json json{{"incident", outcome.plan.mission.incident.name},
                    {"detection_law", sweep::name(found.law)},
                    {"raster_cell_m", found.frame.cell.metres()},
                    {"even_belief", found.even_belief},
                    {"pos", found.success},
                    {"cumulative_pos", found.after.cumulative_success},
                    {"outside_before", found.before.outside},
                    {"outside_after", found.after.outside},
                    {"hole_below", outcome.hole_below.value()},
                    {"sorties", ordered_json::array()},
                    {"sectors", sectors_json(outcome)},
                    {"remarks", found.remarks},
                    {"logs", outcome.logs},
                    {"left_out_of_reports", outcome.problems}};
  for (const debrief::SortieResult& result : found.sorties) {
    json["sorties"].push_back(sortie_json(outcome, result));
  }
  ordered_json next{{"changes", outcome.next.changes}};
  if (outcome.next_plan && outcome.next_plan->belief) {
    next["probability_of_success"] = outcome.next_plan->belief->probability_of_success.value();
    next["bound"] = outcome.next_plan->belief->bound.value();
  }
  if (!outcome.next_refusal.empty()) next["refusal"] = outcome.next_refusal;
  json["next"] = next;
  json["provenance"] = ordered_json::parse(provenance_json(provenance).text);
  return json.dump(2) + "\n";
}

}  // namespace sweepwright::formats
