#include "plan/success.hpp"

#include <algorithm>
#include <map>

#include "sweepwright/effort/optimal.hpp"
#include "sweepwright/grid/clip.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::plan {
namespace {

/// The belief's probability by name of cell, to a square metre: cells are evenly likely all over.
std::map<std::string, double> densities(const belief::Belief& belief) {
  std::map<std::string, double> density;
  for (std::size_t i = 0; i < belief.cells.size(); ++i) {
    density[belief.cells[i].name] = belief.probability[i] / belief.area[i].square_metres();
  }
  return density;
}

double held_by(const Region& sector, const grid::Grid& grid, const grid::Level& level,
               const std::map<std::string, double>& density) {
  double held = 0;
  grid::visit_clipped(grid, sector, level, [&](const grid::ClippedCell& part) {
    const auto found = density.find(part.cell.name);
    if (found != density.end()) held += found->second * part.area.square_metres();
  });
  return std::min(held, 1.0);
}

}  // namespace

void set_success(Plan& plan) {
  PlanBelief& belief = plan.belief.value();
  const grid::Grid& grid = grid::grid(plan.mission.grid.system);
  const grid::Level& level = grid.level(plan.mission.grid.level);
  const std::map<std::string, double> density = densities(belief.belief);
  double held = 0;
  double found = 0;
  for (Assignment& assignment : plan.assignments) {
    const double poc = held_by(assignment.sector, grid, level, density);
    assignment.probability_of_containment = sweep::Probability(poc);
    held += poc;
    found += poc * assignment.probability_of_detection.value();
  }
  belief.probability_of_containment = sweep::Probability(std::min(held, 1.0));
  belief.probability_of_success = sweep::Probability(std::min(found, 1.0));
  if (held > 0) {
    belief.bound =
        effort::optimal_allocation({belief.belief.probability, belief.belief.area}, plan.effort)
            .pos;
  }
}

}  // namespace sweepwright::plan
