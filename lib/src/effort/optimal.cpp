#include "sweepwright/effort/optimal.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "sweepwright/base/error.hpp"

namespace sweepwright::effort {
namespace {

/// A cell still in play: as much area as it has, worth that much. What worth is, depends on the
/// question: the density of probability, or its logarithm.
struct Bid {
  double worth;
  double area;
};

/// The level x at which the sum of area (worth - x) over all bids above x is `target`. Newton's
/// method from below: see optimal.hpp. Leaves only the bids above the level.
double level_for(std::vector<Bid>& bids, double target) {
  while (true) {
    double area = 0;
    double worth = 0;
    for (const Bid& bid : bids) {
      area += bid.area;
      worth += bid.area * bid.worth;
    }
    const double level = (worth - target) / area;
    const auto out = std::remove_if(bids.begin(), bids.end(),
                                    [=](const Bid& bid) { return bid.worth <= level; });
    // Rounding may put all that is left at the level itself: then it is found.
    if (out == bids.end() || out == bids.begin()) return level;
    bids.erase(out, bids.end());
  }
}

std::string cell_number(std::size_t i) {
  return fmt::format("cell {}", i + 1);
}

/// The sum of the probabilities. Throws for what is outside the domain.
double checked_total(const Cells& cells) {
  if (cells.probabilities.size() != cells.areas.size()) {
    throw Error(ErrorCode::value, fmt::format("there are {} probabilities and {} areas",
                                              cells.probabilities.size(), cells.areas.size()));
  }
  constexpr double kRounding = 1e-9;
  double total = 0;
  for (std::size_t i = 0; i < cells.areas.size(); ++i) {
    const double probability = cells.probabilities[i];
    if (!(probability >= 0 && probability <= 1)) {
      throw Error(ErrorCode::value,
                  fmt::format("the probability is {}, expected 0 to 1", probability), {},
                  cell_number(i));
    }
    const double area = cells.areas[i].square_metres();
    if (!(area > 0) || !std::isfinite(area)) {
      throw Error(ErrorCode::value,
                  fmt::format("the area is {} square metres, expected more than 0", area), {},
                  cell_number(i));
    }
    total += probability;
  }
  if (total > 1 + kRounding) {
    throw Error(
        ErrorCode::value,
        fmt::format("the probabilities of the cells add up to {}, expected 1 at most", total),
        "divide each by their sum");
  }
  if (total <= 0) {
    throw Error(ErrorCode::impossible,
                "no cell holds any probability: the belief lies wholly outside these cells",
                "take the cells round the datum");
  }
  return total;
}

double density(const Cells& cells, std::size_t i) {
  return cells.probabilities[i] / cells.areas[i].square_metres();
}

double greatest_density(const Cells& cells) {
  double greatest = 0;
  for (std::size_t i = 0; i < cells.areas.size(); ++i) {
    greatest = std::max(greatest, density(cells, i));
  }
  return greatest;
}

}  // namespace

Allocation optimal_allocation(const Cells& cells, Area effort) {
  const double total = checked_total(cells);
  if (!(effort >= Area()) || !std::isfinite(effort.square_metres())) {
    throw Error(ErrorCode::value, fmt::format("the search effort is {} square metres, expected 0 "
                                              "or more",
                                              effort.square_metres()));
  }
  // Densities are taken against the greatest, so that logarithms stay small and keep their digits.
  const double greatest = greatest_density(cells);
  Allocation result;
  result.coverages.resize(cells.areas.size());
  std::vector<Bid> bids;
  bids.reserve(cells.areas.size());
  for (std::size_t i = 0; i < cells.areas.size(); ++i) {
    const double share = density(cells, i) / greatest;
    const double worth = share > 0 ? std::log(share) : -HUGE_VAL;
    result.coverages[i] = worth;  // kept here until the level is known
    if (share > 0) bids.push_back({worth, cells.areas[i].square_metres()});
  }
  const double level = level_for(bids, effort.square_metres());
  result.threshold_per_m2 = greatest * std::exp(level);
  double pos = 0;
  for (std::size_t i = 0; i < cells.areas.size(); ++i) {
    double& coverage = result.coverages[i];
    coverage = std::max(coverage - level, 0.0);
    // p (1 - exp(-c)) without the exponential: exp(-c) is threshold / density.
    if (coverage > 0) {
      pos += std::max(
          cells.probabilities[i] - result.threshold_per_m2 * cells.areas[i].square_metres(), 0.0);
    }
  }
  result.pos = sweep::Probability(std::min({pos, total, 1.0}));
  return result;
}

sweep::Probability probability_of_success(std::span<const double> probabilities,
                                          std::span<const double> coverages) {
  if (probabilities.size() != coverages.size()) {
    throw Error(ErrorCode::value, fmt::format("there are {} probabilities and {} coverages",
                                              probabilities.size(), coverages.size()));
  }
  double pos = 0;
  for (std::size_t i = 0; i < coverages.size(); ++i) {
    pos -= probabilities[i] * std::expm1(-coverages[i]);
  }
  return sweep::Probability(std::min(pos, 1.0));
}

Area effort_for(const Cells& cells, sweep::Probability wanted) {
  const double total = checked_total(cells);
  constexpr double kRounding = 1e-12;
  if (wanted.value() >= total * (1 - kRounding)) {
    throw Error(ErrorCode::impossible,
                fmt::format("no effort gives a probability of success of {}: the cells hold {:.4f} "
                            "in all, and no search finds everything",
                            wanted.value(), total),
                "ask for less, or take more ground in");
  }
  if (wanted.value() <= 0) return {};
  std::vector<Bid> bids;
  bids.reserve(cells.areas.size());
  for (std::size_t i = 0; i < cells.areas.size(); ++i) {
    const double worth = density(cells, i);
    if (worth > 0) bids.push_back({worth, cells.areas[i].square_metres()});
  }
  const double threshold = level_for(bids, wanted.value());
  double effort = 0;
  for (const Bid& bid : bids) effort += bid.area * std::log(bid.worth / threshold);
  return Area::square_metres(effort);
}

}  // namespace sweepwright::effort
