#include "sweepwright/belief/scenario.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "belief/measure.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::belief {
namespace {

constexpr std::size_t kMostScenarios = 100;

std::vector<std::unique_ptr<Measure>> measures(const std::vector<Scenario>& scenarios,
                                               const grid::Grid& grid, const grid::Level& level) {
  std::vector<std::unique_ptr<Measure>> found;
  for (std::size_t i = 0; i < scenarios.size(); ++i) {
    try {
      found.push_back(make_measure(scenarios[i].source, grid, level));
    } catch (const Error& error) {
      throw scenarios.size() == 1 ? error : error.at(fmt::format("scenario {}", i + 1));
    }
  }
  return found;
}

void require_room(std::size_t cells) {
  if (cells < kMostCells) return;
  throw Error(ErrorCode::value, "the belief has more than a million cells",
              "take a coarser level or a smaller box");
}

/// Cells in the order in which they are met, each once.
std::vector<grid::Cell> cells_of(const std::vector<std::unique_ptr<Measure>>& measures) {
  std::vector<grid::Cell> cells;
  std::unordered_map<std::string, std::size_t> known;
  for (const auto& measure : measures) {
    measure->visit([&](const grid::Cell& cell) {
      if (!known.emplace(cell.name, cells.size()).second) return;
      require_room(cells.size());
      cells.push_back(cell);
    });
  }
  const bool boxes = std::all_of(cells.begin(), cells.end(),
                                 [](const grid::Cell& cell) { return cell.box.has_value(); });
  if (boxes) {
    std::stable_sort(cells.begin(), cells.end(), [](const grid::Cell& a, const grid::Cell& b) {
      return std::pair(-a.box->north, a.box->west) < std::pair(-b.box->north, b.box->west);
    });
  }
  return cells;
}

/// Marks the cells that hold kHeldShare of a source, those with most to the square metre first.
void mark_richest(const std::vector<double>& mass, const std::vector<Area>& area,
                  std::vector<bool>& kept) {
  std::vector<std::size_t> order(mass.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return mass[a] * area[b].square_metres() > mass[b] * area[a].square_metres();
  });
  double held = 0;
  for (const std::size_t i : order) {
    if (held >= kHeldShare || mass[i] == 0) return;
    kept[i] = true;
    held += mass[i];
  }
}

Belief belief_of(std::vector<grid::Cell> cells, std::vector<double> probability) {
  // What the integration is off by must not push the sum above 1.
  for (double& p : probability) p = std::clamp(p, 0.0, 1.0);
  return make_belief(std::move(cells), std::move(probability));
}

}  // namespace

std::vector<double> shares(const std::vector<Scenario>& scenarios) {
  if (scenarios.empty() || scenarios.size() > kMostScenarios) {
    throw Error(ErrorCode::value, fmt::format("the belief has {} scenarios, not 1 to {}",
                                              scenarios.size(), kMostScenarios));
  }
  double total = 0;
  for (const Scenario& scenario : scenarios) {
    if (!(scenario.weight >= 0 && std::isfinite(scenario.weight))) {
      throw Error(ErrorCode::value,
                  fmt::format("the weight {} of a scenario is not 0 or more", scenario.weight));
    }
    total += scenario.weight;
  }
  if (!(total > 0)) {
    throw Error(ErrorCode::value, "the weights of the scenarios sum to 0",
                "give at least one a weight above 0");
  }
  std::vector<double> found;
  for (const Scenario& scenario : scenarios) found.push_back(scenario.weight / total);
  return found;
}

Belief make_belief(const std::vector<Scenario>& scenarios, const grid::Grid& grid,
                   const grid::Level& level) {
  const std::vector<double> share = shares(scenarios);
  const auto sources = measures(scenarios, grid, level);
  const std::vector<grid::Cell> cells = cells_of(sources);
  std::vector<Area> area;
  for (const grid::Cell& cell : cells) area.push_back(grid::area(cell));

  std::vector<bool> kept(cells.size(), false);
  std::vector<double> probability(cells.size(), 0.0);
  for (std::size_t s = 0; s < sources.size(); ++s) {
    if (share[s] == 0) continue;
    std::vector<double> mass(cells.size());
    for (std::size_t i = 0; i < cells.size(); ++i) {
      mass[i] = sources[s]->of(cells[i]);
      probability[i] += share[s] * mass[i];
      if (mass[i] > 0 && !sources[s]->is_endless()) kept[i] = true;
    }
    if (sources[s]->is_endless()) mark_richest(mass, area, kept);
  }

  std::vector<grid::Cell> held;
  std::vector<double> held_probability;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (!kept[i]) continue;
    held.push_back(cells[i]);
    held_probability.push_back(probability[i]);
  }
  return belief_of(std::move(held), std::move(held_probability));
}

Belief make_belief(const std::vector<Scenario>& scenarios, const grid::Grid& grid,
                   const grid::Level& level, const grid::LatLonBox& box) {
  const std::vector<double> share = shares(scenarios);
  const auto sources = measures(scenarios, grid, level);
  std::vector<grid::Cell> cells;
  std::vector<double> probability;
  grid.visit(box, level, grid::Selection::touching, [&](const grid::Cell& cell) {
    require_room(cells.size());
    double sum = 0;
    for (std::size_t s = 0; s < sources.size(); ++s) {
      if (share[s] > 0) sum += share[s] * sources[s]->of(cell);
    }
    cells.push_back(cell);
    probability.push_back(sum);
  });
  return belief_of(std::move(cells), std::move(probability));
}

std::optional<Region> containment_ring(const Source& source, double share) {
  if (!(share > 0 && share < 1)) {
    throw Error(ErrorCode::value, fmt::format("no ring holds a share of {}", share),
                "a share lies between 0 and 1");
  }
  const double factor = std::sqrt(-2 * std::log1p(-share));
  if (const auto* datum = std::get_if<Datum>(&source)) {
    return ring(strips(*datum).front().strip, factor, RingCorners::on_the_line);
  }
  if (const auto* ellipse = std::get_if<ErrorEllipse>(&source)) {
    return ring(strips(*ellipse).front().strip, factor, RingCorners::on_the_line);
  }
  return std::nullopt;
}

}  // namespace sweepwright::belief
