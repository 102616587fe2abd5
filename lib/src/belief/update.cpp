#include "sweepwright/belief/update.hpp"

#include <fmt/format.h>

#include <utility>

#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/probability_sum.hpp"

namespace sweepwright::belief {

double success(std::span<const double> probability, std::span<const double> pod) {
  if (probability.size() != pod.size()) {
    throw Error(ErrorCode::value, fmt::format("{} cells have {} probabilities of detection",
                                              probability.size(), pod.size()));
  }
  ProbabilitySum sum;
  for (std::size_t i = 0; i < pod.size(); ++i) {
    if (!(pod[i] >= 0 && pod[i] <= 1)) {
      throw Error(ErrorCode::value,
                  fmt::format("the probability of detection {} is not from 0 to 1", pod[i]),
                  "write 78 percent as 0.78");
    }
    sum.add(probability[i] * pod[i]);
  }
  return sum.value();
}

double update(std::span<double> probability, double& outside, std::span<const double> pod) {
  const double found = success(probability, pod);
  // What is left is added up by itself: 1 - found would lose its digits when little is left.
  ProbabilitySum left;
  left.add(outside);
  for (std::size_t i = 0; i < pod.size(); ++i) left.add(probability[i] * (1 - pod[i]));
  const double rest = left.value();
  if (!(rest > 0)) {
    throw Error(ErrorCode::value, "the search was sure to find the object, and did not",
                "give lower probabilities of detection, or a belief that leaves something outside");
  }
  for (std::size_t i = 0; i < pod.size(); ++i) {
    probability[i] = probability[i] * (1 - pod[i]) / rest;
  }
  outside /= rest;
  return found;
}

Updated updated(Belief belief, std::span<const double> pod) {
  const double found = update(belief.probability, belief.outside, pod);
  belief.cumulative_success += (1 - belief.cumulative_success) * found;
  return {std::move(belief), found};
}

}  // namespace sweepwright::belief
