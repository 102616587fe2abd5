#include "plan/checks.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sweepwright/base/error.hpp"
#include "sweepwright/hazard/climb.hpp"
#include "sweepwright/hazard/terrain_findings.hpp"
#include "sweepwright/hazard/turning_room.hpp"

namespace sweepwright::plan {
namespace {

using hazard::Finding;

void append(std::vector<Finding>& findings, std::vector<Finding> more) {
  findings.insert(findings.end(), std::make_move_iterator(more.begin()),
                  std::make_move_iterator(more.end()));
}

Finding no_model(const Assignment& assignment) {
  return {hazard::Severity::not_checked,
          hazard::Kind::terrain,
          assignment.unit.callsign,
          assignment.sector_name,
          std::nullopt,
          "nothing of this flight was checked against the ground: the mission names no elevation "
          "model",
          "add \"elevation\" to the mission file",
          std::nullopt,
          std::nullopt};
}

hazard::TerrainTask task(const Mission& mission, const Assignment& assignment) {
  const SearchUnit& unit = assignment.unit;
  const hazard::Minima& minima = unit.minima.value_or(mission.minima);
  return {.minimum = minima.clearance,
          .half_width = hazard::corridor_half_width(minima, assignment.spacing),
          .altitude = unit.search_altitude,
          .search_height = unit.search_height,
          .heights = unit.heights,
          .shortest_step = unit.shortest_step,
          .base = unit.base.position,
          .aircraft = aircraft(unit),
          .climb = unit.climb};
}

void check_against_ground(const Mission& mission, Assignment& assignment) {
  if (!sweep::flies(assignment.unit.platform)) return;
  if (!mission.elevation) {
    assignment.findings.push_back(no_model(assignment));
    return;
  }
  const terrain::ElevationModel& model = mission.elevation->model;
  const flight::FlownPattern& flown = assignment.flown;
  const hazard::CrewName crew{assignment.unit.callsign, assignment.sector_name};
  try {
    assignment.terrain = hazard::check_terrain(model, flown, task(mission, assignment));
    const hazard::TerrainCheck& check = *assignment.terrain;
    append(assignment.findings, hazard::terrain_findings(model, flown, check, crew));
    append(assignment.findings, hazard::climb_findings(model, flown, check, crew));
    append(assignment.findings, hazard::turning_room_findings(model, flown, check, crew));
  } catch (const Error& error) {
    throw error.at(fmt::format("unit {}", assignment.unit.callsign));
  }
}

std::vector<Finding> model_findings(const Mission& mission) {
  if (!mission.elevation) return {};
  std::vector<Finding> findings = hazard::model_findings(mission.elevation->model);
  for (const std::string& remark : mission.elevation->remarks) {
    Finding finding;
    finding.severity = hazard::Severity::caution;
    finding.text = "elevation model " + remark;
    findings.push_back(std::move(finding));
  }
  return findings;
}

/// Said on every plan with aircraft: silence would look like safety.
Finding not_in_the_checks() {
  Finding finding;
  finding.severity = hazard::Severity::not_checked;
  finding.kind = hazard::Kind::airspace;
  finding.text = "airspace, obstacles and the distance between crews were not checked";
  finding.cure = "check charts and notices, and agree on heights and times with the crews nearby";
  return finding;
}

}  // namespace

void check_flights(Plan& plan) {
  plan.findings = model_findings(plan.mission);
  const bool any_flies =
      std::any_of(plan.assignments.begin(), plan.assignments.end(),
                  [](const Assignment& each) { return sweep::flies(each.unit.platform); });
  if (any_flies) plan.findings.push_back(not_in_the_checks());
  for (Assignment& assignment : plan.assignments) {
    check_against_ground(plan.mission, assignment);
    hazard::sort_worst_first(assignment.findings);
    plan.findings.insert(plan.findings.end(), assignment.findings.begin(),
                         assignment.findings.end());
  }
  hazard::sort_worst_first(plan.findings);
}

std::vector<Finding> findings_for(const Plan& plan, const Assignment& assignment) {
  std::vector<Finding> findings = assignment.findings;
  for (const Finding& finding : plan.findings) {
    if (finding.crew.empty()) findings.push_back(finding);
  }
  hazard::sort_worst_first(findings);
  return findings;
}

}  // namespace sweepwright::plan
