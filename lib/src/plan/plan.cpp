#include "sweepwright/plan/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plan/checks.hpp"
#include "plan/choose_pattern.hpp"
#include "plan/fly.hpp"
#include "plan/leaves_sector.hpp"
#include "plan/share_ground.hpp"
#include "plan/success.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/grid/systems.hpp"
#include "sweepwright/position/position_text.hpp"
#include "sweepwright/sector/sectors.hpp"
#include "sweepwright/sweep/sector_search.hpp"

namespace sweepwright::plan {
namespace {

/// How often spacings are widened before a plan is given up. Each round meets the worst unit's
/// time; one or two are usual.
constexpr int kMostRounds = 40;
/// Share of the bound below which an area is worth another look; own choice.
constexpr double kWorthAnotherLook = 0.85;

std::string unit_place(const SearchUnit& unit) {
  return fmt::format("unit {}", unit.callsign);
}

sweep::SweepWidth width_of(const Mission& mission, const SearchUnit& unit) {
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

[[noreturn]] void refuse_short_time(const Assignment& assignment) {
  throw Error(ErrorCode::impossible,
              fmt::format("the search time of {} is too short for any pattern in sector {}",
                          format_duration_minutes(assignment.search_time), assignment.sector_name),
              "give the unit more on-scene endurance, or leave it out",
              unit_place(assignment.unit));
}

/// Draws all patterns at coverages that every unit has the time for, at most those given. All are
/// lowered together, so that an area is searched evenly; where each unit has ground of its own, by
/// belief, each is lowered alone.
void draw_patterns_that_fit(const Mission& mission, std::vector<sweep::Coverage>& coverages,
                            std::vector<Assignment>& assignments) {
  const bool together = !mission.area.polygons.empty();
  for (int round = 0; round < kMostRounds; ++round) {
    for (std::size_t i = 0; i < assignments.size(); ++i) {
      draw_pattern(mission, coverages[i], assignments[i]);
    }
    const double worst = worst_fit(assignments);
    if (worst <= 1) return;
    for (std::size_t i = 0; i < assignments.size(); ++i) {
      const double fit =
          together ? worst : assignments[i].pattern_time / assignments[i].search_time;
      if (fit > 1) coverages[i] = sweep::Coverage(coverages[i].value() / std::max(fit, 1.002));
    }
  }
  for (const Assignment& assignment : assignments) {
    if (assignment.pattern_time > assignment.search_time) refuse_short_time(assignment);
  }
}

/// The ground that the pattern searches at its spacing.
Area searched(const Assignment& assignment) {
  const pattern::Pattern& pattern = assignment.pattern;
  switch (pattern.kind) {
    case pattern::Kind::contour:
      return area(assignment.sector) * pattern.area_share.value_or(1.0);
    case pattern::Kind::square:
      // Each leg searches one spacing on its way.
      return pattern::search_distance(pattern) * pattern.spacing;
    case pattern::Kind::sector: {
      const Length radius = pattern.legs.front().line.length;
      return radius * radius * std::numbers::pi;
    }
    default:
      return area(assignment.sector);
  }
}

void add_light_remarks(Assignment& assignment) {
  const flight::SearchLight& light = assignment.light;
  const Duration dark = light.search - light.in_light;
  if (dark > std::chrono::minutes(1)) {
    assignment.remarks.push_back(fmt::format("{} of the search is before sunrise or after sunset",
                                             format_duration_minutes(dark)));
  }
  if (light.into_sun > std::chrono::minutes(1)) {
    assignment.remarks.push_back(fmt::format("{} of search legs look into a low sun",
                                             format_duration_minutes(light.into_sun)));
  }
}

/// On the ground that the pattern searches. A sector search finds less there than its spacing half
/// way out says: most of the disc lies near the rim.
sweep::Probability detection_where_searched(const Mission& mission, const Assignment& assignment) {
  if (assignment.pattern.kind != pattern::Kind::sector) {
    return sweep::probability_of_detection(mission.detection_law, assignment.coverage);
  }
  return sweep::sector_search_probability(mission.detection_law, assignment.sweep_width.width,
                                          {assignment.pattern.legs.front().line.length});
}

void finish(const Mission& mission, Assignment& assignment) {
  assignment.coverage = sweep::coverage(assignment.sweep_width.width, assignment.spacing);
  assignment.searched_share = std::min(1.0, searched(assignment) / area(assignment.sector));
  assignment.probability_of_detection = sweep::Probability(
      assignment.searched_share * detection_where_searched(mission, assignment).value());
  const grid::Grid& grid = grid::grid(mission.grid.system);
  assignment.cells = grid.cells_touching(assignment.sector, grid.level(mission.grid.level));

  assignment.remarks = assignment.pattern.remarks;
  const std::vector<std::string>& flown = assignment.flown.remarks;
  assignment.remarks.insert(assignment.remarks.end(), flown.begin(), flown.end());
  add_light_remarks(assignment);
  if (const auto outside = farthest_outside(assignment.flown, assignment.sector)) {
    assignment.remarks.push_back(
        fmt::format("turns leave the sector by up to {}, near {}: agree on it with the crews "
                    "beside it",
                    format_length(outside->distance, LengthUnit::nautical_mile, 2),
                    format_position(outside->place)));
  }
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

/// Where the search will be, before there are sectors.
Position place_of_search(const Plan& plan) {
  if (!plan.mission.area.polygons.empty()) return middle(plan.mission.area);
  if (!plan.belief) {
    throw Error(ErrorCode::value, "the mission names neither a search area nor a belief",
                "add search_area, or belief");
  }
  const belief::Belief& belief = plan.belief->belief;
  const auto likeliest = std::max_element(belief.probability.begin(), belief.probability.end());
  return label_point(
      belief.cells[static_cast<std::size_t>(likeliest - belief.probability.begin())]);
}

Assignment new_assignment(const Plan& plan, std::size_t index) {
  Assignment assignment;
  assignment.unit = plan.mission.units[index];
  assignment.sector_name = sector::sector_name(plan.mission.incident.day_letter, index + 1);
  try {
    assignment.sweep_width = width_of(plan.mission, assignment.unit);
    guess_time_on_scene(plan.mission, place_of_search(plan), assignment);
  } catch (const Error& error) {
    throw error.at(unit_place(assignment.unit));
  }
  return assignment;
}

/// `lowered`: the hours did not reach the wanted coverage of an area.
void add_remarks(Plan& plan, bool lowered) {
  if (lowered) {
    plan.remarks.push_back(fmt::format(
        "the hours do not reach the wanted coverage of {:.2f}: track spacings are widened to a "
        "coverage of {:.2f}",
        plan.coverage_wanted.value(), plan.coverage_planned.value()));
  }
  if (!plan.belief) return;
  const PlanBelief& belief = *plan.belief;
  if (belief.probability_of_containment == sweep::Probability()) {
    plan.remarks.push_back(
        "the belief lies wholly outside the search area: this search cannot find the object");
  }
  const double reached =
      belief.bound.value() > 0 ? belief.probability_of_success.value() / belief.bound.value() : 1.0;
  if (!plan.mission.area.polygons.empty() && reached < kWorthAnotherLook) {
    plan.remarks.push_back(
        "searching the whole area evenly finds clearly less than the same hours could: without "
        "search_area in the mission file, each unit searches where the belief is worth most");
  }
  if (plan.mission.detection_law != sweep::DetectionLaw::exponential) {
    plan.remarks.push_back(fmt::format(
        "the bound is that of the exponential law; the plan's probability of success that of the "
        "{} law",
        sweep::name(plan.mission.detection_law)));
  }
}

}  // namespace

Plan make_plan(const Mission& mission) {
  Plan plan;
  plan.mission = mission;
  plan.coverage_wanted = mission.wanted_coverage;
  const grid::Grid& grid = grid::grid(mission.grid.system);
  const grid::Level& level = grid.level(mission.grid.level);
  if (!mission.scenarios.empty()) {
    plan.belief = PlanBelief{make_belief(mission.scenarios, grid, level), {}, {}, {}};
    plan.belief->belief.cumulative_success = mission.earlier_success;
  }
  for (std::size_t i = 0; i < mission.units.size(); ++i) {
    plan.assignments.push_back(new_assignment(plan, i));
    plan.effort += effort(plan.assignments.back());
  }

  std::vector<sweep::Coverage> coverages = share_ground(plan);
  plan.searched = area(plan.area);
  draw_patterns_that_fit(mission, coverages, plan.assignments);

  for (Assignment& assignment : plan.assignments) finish(mission, assignment);
  plan.cells = grid.cells_touching(plan.area, level);
  summarize(plan);
  if (plan.belief) set_success(plan);
  check_flights(plan);
  add_remarks(plan, !mission.area.polygons.empty() && coverages[0] < mission.wanted_coverage);
  return plan;
}

}  // namespace sweepwright::plan
