#include "sweepwright/belief/probability_sum.hpp"

#include <fmt/format.h>

#include "sweepwright/base/error.hpp"

namespace sweepwright::belief {

void ProbabilitySum::refuse(double probability) {
  throw Error(ErrorCode::value, fmt::format("the probability {} is not from 0 to 1", probability),
              "write 25 percent as 0.25");
}

double sum(std::span<const double> probabilities) {
  ProbabilitySum sum;
  for (const double probability : probabilities) sum.add(probability);
  return sum.value();
}

}  // namespace sweepwright::belief
