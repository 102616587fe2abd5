#include "plan/share_ground.hpp"

#include <algorithm>

#include "plan/fly.hpp"
#include "sweepwright/effort/assign.hpp"
#include "sweepwright/flight/turn.hpp"
#include "sweepwright/sector/divide.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::plan {
namespace {

/// Legs shorter than so many turn diameters are more turn than leg. Own choice.
constexpr double kLeastLegInDiameters = 4;

effort::Searcher searcher(const Assignment& assignment) {
  const SearchUnit& unit = assignment.unit;
  const Length radius =
      flight::turn_radius(flight::rate_of_turn(unit.turning, unit.search_speed), unit.search_speed);
  return {{.callsign = unit.callsign,
           .sweep_width = assignment.sweep_width.width,
           .search_speed = unit.search_speed,
           .search_time = assignment.search_time},
          {.least_leg = radius * (2 * kLeastLegInDiameters),
           .least_spacing = radius,
           .least_width = radius * 2}};
}

std::vector<sweep::Coverage> share_by_belief(Plan& plan) {
  std::vector<effort::Searcher> searchers;
  for (const Assignment& assignment : plan.assignments) searchers.push_back(searcher(assignment));
  const effort::FlyablePlan best =
      effort::assign(effort::ground_of(plan.belief->belief), searchers, plan.mission.leg_direction);
  std::vector<sweep::Coverage> coverages;
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    plan.assignments[i].sector = best.assignments[i].region;
    coverages.push_back(best.assignments[i].coverage);
    for (const Polygon& polygon : best.assignments[i].region.polygons) {
      plan.area.polygons.push_back(polygon);
    }
  }
  return coverages;
}

std::vector<sweep::Coverage> share_area(Plan& plan) {
  plan.area = plan.mission.area;
  // V T S with S = W / C: the same C for all, so shares go with W V T.
  std::vector<double> shares;
  for (const Assignment& assignment : plan.assignments) {
    shares.push_back(effort(assignment).square_metres());
  }
  const std::vector<Region> sectors = sector::divide(plan.area, shares, plan.mission.leg_direction);
  for (std::size_t i = 0; i < sectors.size(); ++i) plan.assignments[i].sector = sectors[i];
  const sweep::Coverage affordable = sweep::coverage_of_effort(plan.effort, area(plan.area));
  return std::vector(sectors.size(), std::min(plan.mission.wanted_coverage, affordable));
}

}  // namespace

Area effort(const Assignment& assignment) {
  return sweep::search_effort(assignment.sweep_width.width, assignment.unit.search_speed,
                              assignment.search_time);
}

std::vector<sweep::Coverage> share_ground(Plan& plan) {
  return plan.mission.area.polygons.empty() ? share_by_belief(plan) : share_area(plan);
}

}  // namespace sweepwright::plan
