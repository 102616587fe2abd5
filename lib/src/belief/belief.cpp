#include "sweepwright/belief/belief.hpp"

#include <fmt/format.h>

#include <utility>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/belief/probability_sum.hpp"

namespace sweepwright::belief {
namespace {

double checked_sum(const std::vector<grid::Cell>& cells, const std::vector<double>& probability) {
  if (cells.size() != probability.size()) {
    throw Error(ErrorCode::value,
                fmt::format("{} cells have {} probabilities", cells.size(), probability.size()));
  }
  ProbabilitySum sum;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    try {
      sum.add(probability[i]);
    } catch (const Error& error) {
      throw error.at(fmt::format("cell {}", printable(cells[i].name)));
    }
  }
  return sum.value();
}

Belief scaled(std::vector<grid::Cell> cells, std::vector<double> probability, double outside,
              double total) {
  Belief belief;
  belief.area.reserve(cells.size());
  for (const grid::Cell& cell : cells) belief.area.push_back(grid::area(cell));
  if (total != 1) {
    for (double& p : probability) p /= total;
    outside /= total;
  }
  belief.cells = std::move(cells);
  belief.probability = std::move(probability);
  belief.outside = outside;
  return belief;
}

void require_something(double inside) {
  if (inside > 0) return;
  throw Error(ErrorCode::value, "the whole belief lies outside the cells",
              "take cells that hold at least a part of it");
}

}  // namespace

Belief make_belief(std::vector<grid::Cell> cells, std::vector<double> probability) {
  const double inside = checked_sum(cells, probability);
  require_something(inside);
  if (inside > 1 + kSumTolerance) {
    throw Error(ErrorCode::value,
                fmt::format("the probabilities sum to {:.7g}, more than 1", inside),
                "divide each by their sum");
  }
  return inside > 1 ? scaled(std::move(cells), std::move(probability), 0, inside)
                    : scaled(std::move(cells), std::move(probability), 1 - inside, 1);
}

Belief make_belief(std::vector<grid::Cell> cells, std::vector<double> probability, double outside) {
  const double inside = checked_sum(cells, probability);
  require_something(inside);
  if (!(outside >= 0 && outside <= 1)) {
    throw Error(ErrorCode::value,
                fmt::format("the probability outside, {}, is not from 0 to 1", outside));
  }
  const double total = inside + outside;
  if (!(total > 1 - kSumTolerance && total < 1 + kSumTolerance)) {
    throw Error(ErrorCode::value,
                fmt::format("the cells sum to {:.7g} and outside is {:.7g}: together {:.7g}, not 1",
                            inside, outside, total),
                "state outside as 1 less the sum of the cells, or leave it out");
  }
  return scaled(std::move(cells), std::move(probability), outside, total);
}

}  // namespace sweepwright::belief
