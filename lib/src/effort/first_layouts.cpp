#include "effort/first_layouts.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "effort/climb.hpp"

namespace sweepwright::effort {
namespace {

/// Evenly spaced places from `from` to `to`, both included.
std::vector<double> places(double from, double to, int gaps) {
  std::vector<double> all;
  for (int i = 0; i <= gaps; ++i) all.push_back(from + (to - from) * i / gaps);
  return all;
}

/// Calls `visit` with every box of a lattice of `gaps` x `gaps` over the window.
template <typename Visit>
void visit_boxes(const Box& window, int gaps, Visit visit) {
  const std::vector<double> columns = places(window.left, window.right, gaps);
  const std::vector<double> rows = places(window.low, window.high, gaps);
  for (std::size_t left = 0; left + 1 < columns.size(); ++left) {
    for (std::size_t right = left + 1; right < columns.size(); ++right) {
      for (std::size_t low = 0; low + 1 < rows.size(); ++low) {
        for (std::size_t high = low + 1; high < rows.size(); ++high) {
          visit(Box{columns[left], columns[right], rows[low], rows[high]});
        }
      }
    }
  }
}

/// Several crews in one box at one coverage.
double shared_worth(double mass, double effort, double area) {
  return mass * -std::expm1(-effort / area);
}

double total_effort(std::span<const Crew> crews) {
  double total = 0;
  for (const Crew& crew : crews) total += crew.effort;
  return total;
}

using Group = std::vector<std::size_t>;

Group everyone(std::span<const Crew> crews) {
  Group all(crews.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

/// Cuts the box for the group in proportion to effort: two groups as near half as can be, a cut
/// across the longer side, and each part again. As sector/divide.hpp does with areas.
void divide(const Box& box, std::span<const Crew> crews, const Group& group, Layout& layout) {
  if (group.size() == 1) {
    layout[group[0]] = box;
    return;
  }
  Group first;
  Group second;
  double first_effort = 0;
  double second_effort = 0;
  for (const std::size_t crew : group) {  // the strongest first: each to the weaker side
    const bool to_first = first_effort <= second_effort;
    (to_first ? first : second).push_back(crew);
    (to_first ? first_effort : second_effort) += crews[crew].effort;
  }
  const double share = first_effort / (first_effort + second_effort);
  Box one = box;
  Box other = box;
  if (box.across() >= box.up()) {
    one.right = other.left = box.left + share * box.across();
  } else {
    one.high = other.low = box.low + share * box.up();
  }
  divide(one, crews, first, layout);
  divide(other, crews, second, layout);
}

/// A box divided between crews, and what they find.
struct Shared {
  Box box;
  Layout layout;
  double found = -1;  ///< -1: it cannot be flown
};

Shared shared(const PlaneBelief& belief, std::span<const Crew> crews, const Group& all,
              const Box& box) {
  Shared result{box, Layout(crews.size())};
  divide(box, crews, all, result.layout);
  for (std::size_t i = 0; i < crews.size(); ++i) {
    if (!can_fly(crews[i], result.layout[i])) return result;
  }
  result.found = worth(belief, crews, result.layout);
  return result;
}

/// The best box of a lattice for all crews together.
Shared best_shared(const PlaneBelief& belief, std::span<const Crew> crews, const Box& window,
                   int gaps) {
  const double effort = total_effort(crews);
  const Group all = everyone(crews);
  Shared best;
  visit_boxes(window, gaps, [&](const Box& box) {
    // No least spacing can make more of it.
    if (shared_worth(belief.quick_mass(box), effort, box.area()) <= best.found) return;
    Shared tried = shared(belief, crews, all, box);
    if (tried.found > best.found) best = std::move(tried);
  });
  return best;
}

/// The same off the lattice: its edges climb.
Shared climbed(const PlaneBelief& belief, std::span<const Crew> crews, const Box& start) {
  constexpr double kFirstStep = 0.05;
  constexpr double kLeastStep = 1e-4;
  const Group all = everyone(crews);
  const auto box = [&](std::span<const double> at) {
    return Box{start.left + at[0] * start.across(), start.right + at[1] * start.across(),
               start.low + at[2] * start.up(), start.high + at[3] * start.up()};
  };
  const Summit summit = climb({0, 0, 0, 0}, kFirstStep, kLeastStep, [&](const auto& at) {
    const Box tried = box(at);
    if (tried.across() <= 0 || tried.up() <= 0) return -1.0;
    return shared(belief, crews, all, tried).found;
  });
  return shared(belief, crews, all, box(summit.at));
}

std::optional<Layout> together(const PlaneBelief& belief, std::span<const Crew> crews,
                               const Box& window) {
  constexpr int kGaps = 24;
  const Shared best = best_shared(belief, crews, window, kGaps);
  if (best.found < 0) return std::nullopt;
  return climbed(belief, crews, best.box).layout;
}

/// A way to cut ground and crews in two: the first `crews` on the low side of the cut, or on the
/// high side.
struct Split {
  Box low;
  Box high;
  std::size_t crews = 0;
  bool strong_low = true;
  double found = -1;
};

/// The most that each of several efforts finds in a box of the window.
std::vector<double> most_found(const PlaneBelief& belief, const Box& window,
                               const std::vector<double>& efforts) {
  constexpr int kGaps = 10;
  std::vector<double> most(efforts.size(), 0.0);
  visit_boxes(window, kGaps, [&](const Box& box) {
    const double mass = belief.quick_mass(box);
    if (mass <= 0) return;
    for (std::size_t i = 0; i < efforts.size(); ++i) {
      most[i] = std::max(most[i], shared_worth(mass, efforts[i], box.area()));
    }
  });
  return most;
}

Split best_split(const PlaneBelief& belief, std::span<const Crew> crews, const Box& window) {
  constexpr std::size_t kMostWays = 8;
  constexpr int kCuts = 12;
  std::vector<std::size_t> counts;  // of crews in the first group
  std::vector<double> strong;
  std::vector<double> weak;
  const std::size_t ways = std::min(crews.size() - 1, kMostWays);
  for (std::size_t way = 1; way <= ways; ++way) {
    counts.push_back(way * (crews.size() - 1) / ways);
    strong.push_back(total_effort(crews.first(counts.back())));
    weak.push_back(total_effort(crews.subspan(counts.back())));
  }
  std::vector<double> efforts = strong;
  efforts.insert(efforts.end(), weak.begin(), weak.end());
  Split best;
  for (int cut = 1; cut < kCuts; ++cut) {
    for (const bool upright : {true, false}) {
      Box low = window;
      Box high = window;
      if (upright) {
        low.right = high.left = window.left + window.across() * cut / kCuts;
      } else {
        low.high = high.low = window.low + window.up() * cut / kCuts;
      }
      const std::vector<double> found_low = most_found(belief, low, efforts);
      const std::vector<double> found_high = most_found(belief, high, efforts);
      for (std::size_t way = 0; way < ways; ++way) {
        for (const bool strong_low : {true, false}) {
          const auto& with_strong = strong_low ? found_low : found_high;
          const auto& with_weak = strong_low ? found_high : found_low;
          const double found = with_strong[way] + with_weak[ways + way];
          if (found > best.found) best = {low, high, counts[way], strong_low, found};
        }
      }
    }
  }
  return best;
}

/// Splits ground and crews as long as two boxes promise more than one. False when a part cannot be
/// flown.
bool split(const PlaneBelief& belief, std::span<const Crew> crews, const Box& window,
           std::span<Box> layout) {
  constexpr int kGaps = 20;
  constexpr double kClearlyMore = 1 + 1e-6;
  const Shared one = best_shared(belief, crews, window, kGaps);
  if (crews.size() > 1) {
    const Split two = best_split(belief, crews, window);
    if (two.found > kClearlyMore * one.found) {
      const Box& strong = two.strong_low ? two.low : two.high;
      const Box& weak = two.strong_low ? two.high : two.low;
      return split(belief, crews.first(two.crews), strong, layout.first(two.crews)) &&
             split(belief, crews.subspan(two.crews), weak, layout.subspan(two.crews));
    }
  }
  if (one.found < 0) return false;
  std::copy(one.layout.begin(), one.layout.end(), layout.begin());
  return true;
}

/// Each crew, the strongest first, takes the box where it finds most beside those already taken.
std::optional<Layout> one_by_one(const PlaneBelief& belief, std::span<const Crew> crews,
                                 const Box& window) {
  constexpr int kGaps = 20;
  Layout layout;
  for (const Crew& crew : crews) {
    std::optional<Box> best;
    double most = -1;
    visit_boxes(window, kGaps, [&](const Box& box) {
      if (!can_fly(crew, box)) return;
      const double found = worth(belief, crew, box);
      if (found <= most) return;
      for (const Box& taken : layout) {
        if (overlap(taken, box)) return;
      }
      most = found;
      best = box;
    });
    if (!best) return std::nullopt;
    layout.push_back(*best);
  }
  return layout;
}

/// The belief's bounds, widened so that the largest of the least boxes fits in twice over, and
/// beside any other box.
Box window_for(const PlaneBelief& belief, std::span<const Crew> crews) {
  const Box& bounds = belief.bounds();
  double least_long = 0;
  double least_short = 0;
  for (const Crew& crew : crews) {
    least_long = std::max(least_long, crew.least_long);
    least_short = std::max(least_short, crew.least_short);
  }
  const double across = std::max(least_long - bounds.across() / 2, least_short);
  const double up = std::max(least_long - bounds.up() / 2, least_short);
  return {bounds.left - across, bounds.right + across, bounds.low - up, bounds.high + up};
}

}  // namespace

std::vector<Layout> first_layouts(const PlaneBelief& belief, std::span<const Crew> crews) {
  const Box window = window_for(belief, crews);
  std::vector<Layout> layouts;
  if (auto layout = together(belief, crews, window)) layouts.push_back(std::move(*layout));
  Layout halves(crews.size());
  if (split(belief, crews, window, halves)) layouts.push_back(std::move(halves));
  if (auto layout = one_by_one(belief, crews, window)) layouts.push_back(std::move(*layout));
  return layouts;
}

}  // namespace sweepwright::effort
