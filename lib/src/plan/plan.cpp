#include "sweepwright/plan/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "plan/choose_pattern.hpp"
#include "plan/fly.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/grid/systems.hpp"
#include "sweepwright/sector/divide.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::plan {
namespace {

/// How often spacings are widened before a plan is given up. Each round meets the worst unit's
/// time; one or two are usual.
constexpr int kMostRounds = 40;

std::string unit_place(const SearchUnit& unit) {
  return fmt::format("unit {}", unit.callsign);
}

sweep::SweepWidth width_of(const Mission& mission, const SearchUnit& unit) {
  try {
    if (unit.sweep_width && unit.sweep_width_is_corrected) {
      return sweep::given_sweep_width(*unit.sweep_width, unit.sweep_width_source);
    }
    const Conditions& conditions = mission.conditions;
    return sweep::sweep_width({.platform = unit.platform,
                               .object = mission.object.table_name,
                               .visibility = conditions.visibility,
                               .height = unit.search_height,
                               .wind = conditions.wind_speed,
                               .sea = conditions.sea_height,
                               .ground_speed = unit.search_speed,
                               .terrain = conditions.terrain,
                               .fatigued = unit.fatigued,
                               .weather_table = conditions.weather_table,
                               .uncorrected = unit.sweep_width,
                               .uncorrected_source = unit.sweep_width_source});
  } catch (const Error& error) {
    throw error.at(unit_place(unit));
  }
}

Area effort(const Assignment& assignment) {
  return sweep::search_effort(assignment.sweep_width.width, assignment.unit.search_speed,
                              assignment.search_time);
}

void draw_pattern(const Mission& mission, sweep::Coverage coverage, Assignment& assignment) {
  assignment.spacing = sweep::track_spacing(assignment.sweep_width.width, coverage);
  try {
    ChosenPattern chosen = choose_pattern(mission, assignment);
    assignment.pattern = std::move(chosen.pattern);
    assignment.pattern_reason = std::move(chosen.reason);
    assignment.spacing = assignment.pattern.spacing;
    fly_pattern(mission, assignment);
  } catch (const Error& error) {
    throw error.at(unit_place(assignment.unit));
  }
}

/// The most by which a unit's pattern is longer than its time: 1 or less when all fit.
double worst_fit(const std::vector<Assignment>& assignments) {
  double worst = 0;
  for (const Assignment& assignment : assignments) {
    worst = std::max(worst, assignment.pattern_time / assignment.search_time);
  }
  return worst;
}

/// Draws all patterns at a coverage that every unit has the time for, at most `coverage`; returns
/// it.
sweep::Coverage draw_patterns_that_fit(const Mission& mission, sweep::Coverage coverage,
                                       std::vector<Assignment>& assignments) {
  for (int round = 0; round < kMostRounds; ++round) {
    for (Assignment& assignment : assignments) draw_pattern(mission, coverage, assignment);
    const double worst = worst_fit(assignments);
    if (worst <= 1) return coverage;
    coverage = sweep::Coverage(coverage.value() / std::max(worst, 1.002));
  }
  for (const Assignment& assignment : assignments) {
    if (assignment.pattern_time > assignment.search_time) {
      throw Error(
          ErrorCode::impossible,
          fmt::format("the search time of {} is too short for any pattern in sector {}",
                      format_duration_minutes(assignment.search_time), assignment.sector_name),
          "give the unit more on-scene endurance, or leave it out", unit_place(assignment.unit));
    }
  }
  return coverage;
}

void finish(const Mission& mission, Assignment& assignment) {
  assignment.coverage = sweep::coverage(assignment.sweep_width.width, assignment.spacing);
  if (assignment.pattern.kind == pattern::Kind::square) {
    // Each leg of a square searches one spacing on its way.
    const Area swept = pattern::search_distance(assignment.pattern) * assignment.spacing;
    assignment.searched_share = std::min(1.0, swept / area(assignment.sector));
  }
  assignment.probability_of_detection = sweep::Probability(
      assignment.searched_share *
      sweep::probability_of_detection(mission.detection_law, assignment.coverage).value());
  const grid::Grid& grid = grid::grid(mission.grid.system);
  assignment.cells = grid.cells_touching(assignment.sector, grid.level(mission.grid.level));

  assignment.remarks = assignment.pattern.remarks;
  const std::vector<std::string>& flown = assignment.flown.remarks;
  assignment.remarks.insert(assignment.remarks.end(), flown.begin(), flown.end());
  if (assignment.searched_share < 0.995) {
    assignment.remarks.push_back(
        fmt::format("the pattern searches {:.0f} % of the sector; the rest of it is not searched",
                    100 * assignment.searched_share));
  }
  const std::vector<std::string>& cautions = assignment.sweep_width.cautions;
  assignment.remarks.insert(assignment.remarks.end(), cautions.begin(), cautions.end());
}

void summarize(Plan& plan) {
  double covered = 0;
  double detected = 0;
  plan.effort = {};
  for (const Assignment& assignment : plan.assignments) {
    const double ground = area(assignment.sector) / plan.searched;
    covered += ground * assignment.searched_share * assignment.coverage.value();
    detected += ground * assignment.probability_of_detection.value();
    plan.effort += effort(assignment);
  }
  plan.coverage_planned = sweep::Coverage(covered);
  plan.probability_of_detection = sweep::Probability(std::min(detected, 1.0));
}

}  // namespace

Plan make_plan(const Mission& mission) {
  Plan plan;
  plan.mission = mission;
  plan.searched = area(mission.area);
  plan.coverage_wanted = mission.wanted_coverage;

  const Position centre = middle(mission.area);
  for (std::size_t i = 0; i < mission.units.size(); ++i) {
    Assignment assignment;
    assignment.unit = mission.units[i];
    assignment.sector_name = fmt::format("{}{}", mission.incident.day_letter, i + 1);
    assignment.sweep_width = width_of(mission, assignment.unit);
    try {
      guess_time_on_scene(mission, centre, assignment);
    } catch (const Error& error) {
      throw error.at(unit_place(assignment.unit));
    }
    plan.effort += effort(assignment);
    plan.assignments.push_back(assignment);
  }

  // V T S with S = W / C: the same C for all, so shares go with W V T.
  std::vector<double> shares;
  for (const Assignment& assignment : plan.assignments) {
    shares.push_back(effort(assignment).square_metres());
  }
  const std::vector<Region> sectors = sector::divide(mission.area, shares, mission.leg_direction);
  for (std::size_t i = 0; i < sectors.size(); ++i) plan.assignments[i].sector = sectors[i];

  const sweep::Coverage affordable = sweep::coverage_of_effort(plan.effort, plan.searched);
  const sweep::Coverage coverage = std::min(mission.wanted_coverage, affordable);
  const sweep::Coverage reached = draw_patterns_that_fit(mission, coverage, plan.assignments);

  for (Assignment& assignment : plan.assignments) finish(mission, assignment);
  const grid::Grid& grid = grid::grid(mission.grid.system);
  plan.cells = grid.cells_touching(mission.area, grid.level(mission.grid.level));
  summarize(plan);
  if (reached < mission.wanted_coverage) {
    plan.remarks.insert(
        plan.remarks.begin(),
        fmt::format(
            "the hours do not reach the wanted coverage of {:.2f}: track spacings are widened "
            "to a coverage of {:.2f}",
            mission.wanted_coverage.value(), plan.coverage_planned.value()));
  }
  return plan;
}

}  // namespace sweepwright::plan
