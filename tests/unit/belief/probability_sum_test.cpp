// The sum of probabilities does not depend on their order and loses nothing.
#include "sweepwright/belief/probability_sum.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

#include "sweepwright/base/error.hpp"

namespace sweepwright::belief {
namespace {

std::vector<double> mixed_sizes(int count) {
  std::mt19937_64 random(20260101);
  std::uniform_real_distribution<double> exponent(-60, 0);
  std::vector<double> values;
  for (int i = 0; i < count; ++i) values.push_back(std::exp2(exponent(random)));
  return values;
}

TEST(ProbabilitySum, P1_the_order_does_not_matter) {
  std::vector<double> values = mixed_sizes(10000);
  const double forward = sum(values);
  std::mt19937_64 random(7);
  for (int turn = 0; turn < 5; ++turn) {
    std::shuffle(values.begin(), values.end(), random);
    EXPECT_EQ(sum(values), forward);
  }
}

TEST(ProbabilitySum, P1_parts_join_to_the_whole) {
  const std::vector<double> values = mixed_sizes(1001);
  ProbabilitySum first;
  ProbabilitySum second;
  for (std::size_t i = 0; i < values.size(); ++i) (i % 3 == 0 ? first : second).add(values[i]);
  second.add(first);
  EXPECT_EQ(second.value(), sum(values));
}

// The outside witness is the sum in long double (64 bits of mantissa on this machine).
TEST(ProbabilitySum, agrees_with_extended_precision) {
  const std::vector<double> values = mixed_sizes(10000);
  long double witness = 0;
  for (const double value : values) witness += value;
  EXPECT_NEAR(sum(values), static_cast<double>(witness), 1e-12 * sum(values));
}

TEST(ProbabilitySum, a_million_millionths_are_one) {
  EXPECT_NEAR(sum(std::vector<double>(1'000'000, 1e-6)), 1, 2e-16);
}

TEST(ProbabilitySum, whole_ones_are_kept) {
  EXPECT_EQ(sum(std::vector<double>{1, 1, 0.25, 0}), 2.25);
}

TEST(ProbabilitySum, refuses_what_is_no_probability) {
  for (const double wrong : {-1e-9, 1.0000001, std::nan(""), HUGE_VAL}) {
    EXPECT_THROW(sum(std::vector<double>{0.5, wrong}), Error) << wrong;
  }
}

}  // namespace
}  // namespace sweepwright::belief
