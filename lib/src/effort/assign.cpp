#include "sweepwright/effort/assign.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "effort/crew.hpp"
#include "effort/first_layouts.hpp"
#include "effort/improve.hpp"
#include "effort/plane_belief.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/effort/optimal.hpp"
#include "sweepwright/position/plane_region.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::effort {
namespace {

/// A layout, and the plane that it lies on.
struct Candidate {
  LocalPlane plane;
  Layout layout;
  double pos = -1;
};

double pos_of(const PlaneBelief& belief, std::span<const Crew> crews, const Layout& layout) {
  double pos = 0;
  for (std::size_t i = 0; i < crews.size(); ++i) {
    pos -= belief.mass(layout[i]) * std::expm1(-coverage(crews[i], layout[i].area()));
  }
  return pos;
}

/// The best layout along an axis; pos -1 when none can be flown.
Candidate best_along(std::span<const ProbableGround> ground, std::span<const Crew> crews,
                     const LocalPlane& plane) {
  const PlaneBelief belief(ground, plane);
  Candidate best{plane, {}};
  const auto consider = [&](const Layout& layout) {
    const double pos = pos_of(belief, crews, layout);
    if (pos > best.pos) best = {plane, layout, pos};
  };
  for (const Layout& layout : first_layouts(belief, crews)) {
    consider(layout);
    consider(improved(belief, crews, layout));
  }
  return best;
}

PlaneRegion plane_region(const Box& box) {
  const auto corner = [](double right, double up) {
    return PlanePoint{Length::metres(right), Length::metres(up)};
  };
  return {{{{corner(box.left, box.low), corner(box.right, box.low), corner(box.right, box.high),
             corner(box.left, box.high)},
            {}}}};
}

TrueDirection either_way(TrueDirection direction) {
  return direction.degrees() < 180 ? direction : direction.reversed();
}

Assignment make_assignment(const Searcher& searcher, const Crew& crew, const Box& box, double poc,
                           const Region& region, const LocalPlane& plane) {
  Assignment made;
  made.region = region;
  made.area = area(region);
  made.coverage = sweep::Coverage(coverage(crew, made.area.square_metres()));
  made.effort = made.area * made.coverage.value();
  made.spacing = sweep::track_spacing(searcher.unit.sweep_width, made.coverage);
  made.search_time = made.area / made.spacing / searcher.unit.search_speed;
  made.poc = sweep::Probability(std::min(poc, 1.0));
  made.pod = sweep::probability_of_detection(sweep::DetectionLaw::exponential, made.coverage);
  made.pos = sweep::Probability(made.poc.value() * made.pod.value());
  // The leg is the line through the middle, between the shorter sides.
  const double right = (box.left + box.right) / 2;
  const double up = (box.low + box.high) / 2;
  const bool along_axis = box.up() >= box.across();
  const auto place = [&](double part) {
    return plane.to_position({Length::metres(along_axis ? right : right + part * box.across()),
                              Length::metres(along_axis ? up + part * box.up() : up)});
  };
  const GeodesicLine half = geodesic(place(0), place(0.5));
  made.leg = geodesic(place(-0.5), place(0)).length + half.length;
  made.leg_direction = either_way(half.start_track);
  return made;
}

double theoretical_bound(std::span<const ProbableGround> ground, Area effort) {
  std::vector<double> probabilities;
  std::vector<Area> areas;
  for (const ProbableGround& part : ground) {
    probabilities.push_back(part.probability);
    areas.push_back(area(part.ground));
  }
  return optimal_allocation({probabilities, areas}, effort).pos.value();
}

void check(std::span<const Searcher> searchers) {
  if (searchers.empty()) {
    throw Error(ErrorCode::value, "there are no units to search with", "name one at least");
  }
  if (searchers.size() > kMostUnits) {
    throw Error(ErrorCode::value,
                fmt::format("{} units are more than {}", searchers.size(), kMostUnits),
                "divide the search area and the units first");
  }
}

[[noreturn]] void throw_nothing_flies(std::span<const Searcher> searchers) {
  const auto hardest = std::max_element(
      searchers.begin(), searchers.end(), [](const Searcher& a, const Searcher& b) {
        return a.limits.least_leg / (a.unit.search_speed * a.unit.search_time) <
               b.limits.least_leg / (b.unit.search_speed * b.unit.search_time);
      });
  throw Error(
      ErrorCode::impossible,
      fmt::format("no rectangles were found that all units can fly: unit {} flies {:.1f} NM in its "
                  "search time, with legs of {:.1f} NM at least",
                  hardest->unit.callsign,
                  (hardest->unit.search_speed * hardest->unit.search_time).nautical_miles(),
                  hardest->limits.least_leg.nautical_miles()),
      "lower the least leg or the least width, or give fewer units");
}

}  // namespace

std::vector<ProbableGround> ground_of(const belief::Belief& belief) {
  std::vector<ProbableGround> ground;
  for (std::size_t i = 0; i < belief.cells.size(); ++i) {
    if (belief.probability[i] <= 0) continue;
    ground.push_back({grid::outline(belief.cells[i]), belief.probability[i]});
  }
  return ground;
}

FlyablePlan assign(std::span<const ProbableGround> belief, std::span<const Searcher> searchers,
                   std::optional<TrueDirection> axis) {
  check(searchers);
  const std::vector<Crew> crews = make_crews(searchers);
  Area effort;
  for (const Searcher& searcher : searchers) effort += search_effort(searcher.unit);
  FlyablePlan plan;
  plan.bound = sweep::Probability(theoretical_bound(belief, effort));

  const Weight weight = weight_of(belief);
  std::vector<TrueDirection> axes{axis.value_or(weight.long_axis)};
  if (!axis && weight.long_axis != TrueDirection()) axes.push_back(TrueDirection());
  Candidate best{LocalPlane(weight.centre), {}};
  for (const TrueDirection direction : axes) {
    Candidate found = best_along(belief, crews, LocalPlane(weight.centre, direction));
    if (found.pos > best.pos) best = std::move(found);
  }
  if (best.layout.empty()) throw_nothing_flies(searchers);

  plan.axis = either_way(best.plane.axis());
  const PlaneBelief on_plane(belief, best.plane);
  std::vector<PlaneRegion> regions;
  for (const Box& box : best.layout) regions.push_back(plane_region(box));
  share_corners(regions);
  plan.assignments.resize(searchers.size());
  double pos = 0;
  for (std::size_t i = 0; i < crews.size(); ++i) {
    const std::size_t place = crews[i].place;
    plan.assignments[place] =
        make_assignment(searchers[place], crews[i], best.layout[i], on_plane.mass(best.layout[i]),
                        to_region(regions[i], best.plane), best.plane);
    pos += plan.assignments[place].pos.value();
  }
  plan.pos = sweep::Probability(std::min(pos, 1.0));
  plan.ratio = plan.pos.value() / plan.bound.value();
  return plan;
}

}  // namespace sweepwright::effort
