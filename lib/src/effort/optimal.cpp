#include "sweepwright/effort/optimal.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <string>

#include "sweepwright/base/error.hpp"

namespace sweepwright::effort {
namespace {

constexpr double kGreatestArea = std::numeric_limits<double>::max();
constexpr double kEndless = std::numeric_limits<double>::infinity();

/// What is asked for: an effort spent, or a probability of success.
enum class Target { effort, success };

/// A cell whose part in the answer is not known beforehand.
struct OpenCell {
  double probability;
  double area;
  double log_density;  ///< against Survey::reference
};

/// What the cell is worth, so that for both targets the sum of area x (worth - level) over cells
/// above the level has to meet the target.
double worth(const OpenCell& cell, Target target) {
  return target == Target::effort ? cell.log_density : cell.probability / cell.area;
}

/// Densities of probability that the threshold is thought to lie between. Only speed hangs on them.
struct Bracket {
  double low = 0;
  double high = kEndless;
  double reference = 0;  ///< near the threshold, so that logarithms are small and keep their digits
};

/// All cells, looked at once: those above the bracket are searched and summed up, those below it
/// are not searched, and those inside it stay open.
struct Survey {
  double total = 0;        ///< probability of all cells
  OpenCell sure{0, 0, 0};  ///< sums over the searched: probability, area, area x logarithm
  std::vector<OpenCell> open;
};

/// area x (worth - level) over all cells of the survey, `level` being a density.
double down_to(const Survey& survey, const Bracket& bracket, double density, Target target) {
  const bool effort = target == Target::effort;
  const double level = effort ? std::log(density / bracket.reference) : density;
  double sum =
      (effort ? survey.sure.log_density : survey.sure.probability) - level * survey.sure.area;
  for (const OpenCell& cell : survey.open) {
    if (cell.probability > density * cell.area) sum += cell.area * (worth(cell, target) - level);
  }
  return sum;
}

/// The level that meets the target, by Newton's method from below: see optimal.hpp. Leaves only the
/// open cells above it.
double level_for(Survey& survey, double amount, Target target) {
  while (true) {
    double area = survey.sure.area;
    double sum = target == Target::effort ? survey.sure.log_density : survey.sure.probability;
    for (const OpenCell& cell : survey.open) {
      area += cell.area;
      sum += cell.area * worth(cell, target);
    }
    const double level = (sum - amount) / area;
    const auto out = std::remove_if(survey.open.begin(), survey.open.end(),
                                    [=](const auto& cell) { return worth(cell, target) <= level; });
    // Rounding may put all that is left at the level itself: then it is found.
    const bool all = out == survey.open.begin() && !(survey.sure.area > 0);
    if (out == survey.open.end() || all) return level;
    survey.open.erase(out, survey.open.end());
  }
}

[[noreturn]] void throw_bad_cell(const Cells& cells) {
  for (std::size_t i = 0; i < cells.areas.size(); ++i) {
    const std::string place = fmt::format("cell {}", i + 1);
    const double probability = cells.probabilities[i];
    if (!(probability >= 0 && probability <= 1)) {
      throw Error(ErrorCode::value,
                  fmt::format("the probability is {}, expected 0 to 1", probability), {}, place);
    }
    const double area = cells.areas[i].square_metres();
    if (!(area > 0) || !std::isfinite(area)) {
      throw Error(ErrorCode::value,
                  fmt::format("the area is {} square metres, expected more than 0", area), {},
                  place);
    }
  }
  throw Error(ErrorCode::value, "a cell is outside its domain");
}

void check_total(double total) {
  constexpr double kRounding = 1e-9;
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
}

void check_lengths(const Cells& cells) {
  if (cells.probabilities.size() == cells.areas.size()) return;
  throw Error(ErrorCode::value, fmt::format("there are {} probabilities and {} areas",
                                            cells.probabilities.size(), cells.areas.size()));
}

/// Reads and checks every cell once. `log_densities` of cells above the bracket's low end are put
/// down, when wanted; all else is left as it is. Throws for what is outside the domain.
Survey survey(const Cells& cells, const Bracket& bracket, std::vector<double>* log_densities) {
  Survey result;
  bool fine = true;
  for (std::size_t i = 0; i < cells.areas.size(); ++i) {
    const double probability = cells.probabilities[i];
    const double area = cells.areas[i].square_metres();
    fine &= probability >= 0 && probability <= 1 && area > 0 && area <= kGreatestArea;
    result.total += probability;
    const double density = probability / area;
    if (!(density > bracket.low)) continue;
    const double log_density = std::log(density / bracket.reference);
    if (log_densities != nullptr) (*log_densities)[i] = log_density;
    if (density > bracket.high) {
      result.sure.probability += probability;
      result.sure.area += area;
      result.sure.log_density += area * log_density;
    } else {
      result.open.push_back({probability, area, log_density});
    }
  }
  if (!fine) throw_bad_cell(cells);
  check_total(result.total);
  return result;
}

/// The bracket that holds every threshold.
Bracket whole_bracket(const Cells& cells) {
  Bracket bracket;
  for (std::size_t i = 0; i < cells.areas.size(); ++i) {
    const double density = cells.probabilities[i] / cells.areas[i].square_metres();
    if (density > bracket.reference) bracket.reference = density;
  }
  return bracket;
}

/// A likely bracket, from the threshold of every 61st cell; the whole one where they do not say.
Bracket likely_bracket(const Cells& cells, double amount, Target target) {
  constexpr std::size_t kStride = 61;  // a prime, so as not to run along a column of a grid
  constexpr std::size_t kWorthIt = 100 * kStride;
  constexpr double kMargin = 1.25;
  if (cells.areas.size() < kWorthIt) return whole_bracket(cells);
  std::vector<double> probabilities;
  std::vector<Area> areas;
  for (std::size_t i = 0; i < cells.areas.size(); i += kStride) {
    probabilities.push_back(cells.probabilities[i]);
    areas.push_back(cells.areas[i]);
  }
  const Cells sample{probabilities, areas};
  const Bracket whole = whole_bracket(sample);
  try {
    Survey sampled = survey(sample, whole, nullptr);
    const double level = level_for(sampled, amount / kStride, target);
    const double density = target == Target::effort ? whole.reference * std::exp(level) : level;
    if (density > 0) return {density / kMargin, density * kMargin, density};
  } catch (const Error&) {
    // The sample may hold nothing; whoever reads all cells will tell.
  }
  return whole_bracket(cells);
}

/// The survey of a bracket that really holds the threshold.
struct Surveyed {
  Bracket bracket;
  Survey survey;
};

Surveyed survey_for(const Cells& cells, double amount, Target target,
                    std::vector<double>* log_densities) {
  check_lengths(cells);
  const Bracket likely = likely_bracket(cells, amount, target);
  Surveyed result{likely, survey(cells, likely, log_densities)};
  if (likely.low == 0 || (down_to(result.survey, likely, likely.low, target) > amount &&
                          down_to(result.survey, likely, likely.high, target) <= amount)) {
    return result;
  }
  const Bracket whole = whole_bracket(cells);
  return {whole, survey(cells, whole, log_densities)};
}

}  // namespace

Allocation optimal_allocation(const Cells& cells, Area effort) {
  const double amount = effort.square_metres();
  if (!(amount >= 0) || !std::isfinite(amount)) {
    throw Error(ErrorCode::value,
                fmt::format("the search effort is {} square metres, expected 0 or more", amount));
  }
  Allocation result;
  result.coverages.assign(cells.areas.size(), -kEndless);
  Surveyed known = survey_for(cells, amount, Target::effort, &result.coverages);
  const double level = level_for(known.survey, amount, Target::effort);
  for (double& coverage : result.coverages) coverage = std::max(coverage - level, 0.0);

  // p (1 - exp(-c)) without the exponential: exp(-c) is threshold / density.
  result.threshold_per_m2 = known.bracket.reference * std::exp(level);
  const OpenCell& sure = known.survey.sure;
  double pos = sure.probability - result.threshold_per_m2 * sure.area;
  for (const OpenCell& cell : known.survey.open) {
    pos += std::max(cell.probability - result.threshold_per_m2 * cell.area, 0.0);
  }
  result.pos = sweep::Probability(std::clamp(pos, 0.0, std::min(known.survey.total, 1.0)));
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
  Surveyed known = survey_for(cells, wanted.value(), Target::success, nullptr);
  constexpr double kRounding = 1e-12;
  if (wanted.value() >= known.survey.total * (1 - kRounding)) {
    throw Error(ErrorCode::impossible,
                fmt::format("no effort gives a probability of success of {}: the cells hold {:.4f} "
                            "in all, and no search finds everything",
                            wanted.value(), known.survey.total),
                "ask for less, or take more ground in");
  }
  const double threshold = level_for(known.survey, wanted.value(), Target::success);
  return Area::square_metres(
      std::max(down_to(known.survey, known.bracket, threshold, Target::effort), 0.0));
}

}  // namespace sweepwright::effort
