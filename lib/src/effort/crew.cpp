#include "effort/crew.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

#include "sweepwright/base/error.hpp"

namespace sweepwright::effort {
namespace {

void check(const FlyingLimits& limits) {
  for (const auto& [limit, what] :
       {std::pair{limits.least_leg, "leg"}, std::pair{limits.least_spacing, "track spacing"},
        std::pair{limits.least_width, "width of a rectangle"}}) {
    if (limit >= Length() && std::isfinite(limit.metres())) continue;
    throw Error(ErrorCode::value,
                fmt::format("the least {} is {} m, expected 0 or more", what, limit.metres()));
  }
}

Crew make_crew(const Searcher& searcher, std::size_t place) {
  const Unit& unit = searcher.unit;
  const FlyingLimits& limits = searcher.limits;
  check(limits);
  Crew crew;
  crew.place = place;
  crew.effort = search_effort(unit).square_metres();
  crew.flown = (unit.search_speed * unit.search_time).metres();
  crew.most_coverage = limits.least_spacing > Length() ? unit.sweep_width / limits.least_spacing
                                                       : std::numeric_limits<double>::infinity();
  crew.least_long = limits.least_leg.metres();
  crew.least_short = std::max(limits.least_width, limits.least_spacing).metres();
  return crew;
}

}  // namespace

std::vector<Crew> make_crews(std::span<const Searcher> searchers) {
  std::vector<Crew> crews;
  for (std::size_t i = 0; i < searchers.size(); ++i) crews.push_back(make_crew(searchers[i], i));
  const auto rank = [](const Crew& crew) {
    return std::tuple(-crew.effort, crew.flown, crew.most_coverage, crew.least_long,
                      crew.least_short);
  };
  std::stable_sort(crews.begin(), crews.end(),
                   [&](const Crew& a, const Crew& b) { return rank(a) < rank(b); });
  return crews;
}

double coverage(const Crew& crew, double area) {
  return std::min(crew.effort / area, crew.most_coverage);
}

double worth(const PlaneBelief& belief, const Crew& crew, const Box& box) {
  return belief.quick_mass(box) * -std::expm1(-coverage(crew, box.area()));
}

double worth(const PlaneBelief& belief, std::span<const Crew> crews, const Layout& layout) {
  double total = 0;
  for (std::size_t i = 0; i < crews.size(); ++i) total += worth(belief, crews[i], layout[i]);
  return total;
}

}  // namespace sweepwright::effort
