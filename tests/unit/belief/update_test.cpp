// Bayes' rule: rows worked by hand, searches in turn, a million cells.
#include "sweepwright/belief/update.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <vector>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/probability_sum.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::belief {
namespace {

using test::CheckRow;

class BayesRow : public testing::TestWithParam<CheckRow> {};

TEST_P(BayesRow, is_what_the_hand_finds) {
  const CheckRow& row = GetParam();
  std::array probability{row.number("p1"), row.number("p2")};
  double outside = row.number("outside");
  const double found =
      update(probability, outside, std::array{row.number("pod1"), row.number("pod2")});
  EXPECT_NEAR(found, row.number("success"), 1e-15);
  EXPECT_NEAR(probability[0], row.number("new1"), 1e-15);
  EXPECT_NEAR(probability[1], row.number("new2"), 1e-15);
  EXPECT_NEAR(outside, row.number("new_outside"), 1e-15);
}

INSTANTIATE_TEST_SUITE_P(Hand, BayesRow,
                         testing::ValuesIn(test::check_rows(
                             "belief/bayes.csv", {"p1", "p2", "outside", "pod1", "pod2", "success",
                                                  "new1", "new2", "new_outside"})),
                         test::RowName());

struct Sample {
  std::vector<double> probability;
  double outside = 0;
};

Sample sample(std::size_t count) {
  std::mt19937_64 random(42);
  std::exponential_distribution<double> weight(1);
  Sample made;
  double total = made.outside = weight(random);
  for (std::size_t i = 0; i < count; ++i) total += made.probability.emplace_back(weight(random));
  for (double& p : made.probability) p /= total;
  made.outside /= total;
  return made;
}

std::vector<double> pods(std::size_t count, unsigned seed) {
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> pod(0, 1);
  std::vector<double> made(count);
  for (double& value : made) value = pod(random);
  return made;
}

TEST(Update, P1_the_order_of_the_cells_does_not_matter) {
  const std::vector<double> pod = pods(1000, 1);
  Sample forward = sample(1000);
  Sample backward = forward;
  std::reverse(backward.probability.begin(), backward.probability.end());
  const std::vector<double> reversed(pod.rbegin(), pod.rend());
  EXPECT_EQ(update(forward.probability, forward.outside, pod),
            update(backward.probability, backward.outside, reversed));
  std::reverse(backward.probability.begin(), backward.probability.end());
  EXPECT_EQ(forward.probability, backward.probability);
  EXPECT_EQ(forward.outside, backward.outside);
}

TEST(Update, P2_two_searches_are_one_with_the_joint_detection) {
  const std::vector<double> first = pods(200, 1);
  const std::vector<double> second = pods(200, 2);
  std::vector<double> both(200);
  for (std::size_t i = 0; i < both.size(); ++i) both[i] = 1 - (1 - first[i]) * (1 - second[i]);
  Sample in_turn = sample(200);
  Sample at_once = in_turn;
  const double pos1 = update(in_turn.probability, in_turn.outside, first);
  const double pos2 = update(in_turn.probability, in_turn.outside, second);
  const double joint = update(at_once.probability, at_once.outside, both);
  EXPECT_NEAR(1 - (1 - pos1) * (1 - pos2), joint, 1e-14);
  for (std::size_t i = 0; i < both.size(); ++i) {
    EXPECT_NEAR(in_turn.probability[i], at_once.probability[i], 1e-14);
  }
  EXPECT_NEAR(in_turn.outside, at_once.outside, 1e-14);
}

TEST(Update, a_million_cells_and_ten_searches_still_sum_to_one) {
  Sample belief = sample(1'000'000);
  for (unsigned search = 0; search < 10; ++search) {
    update(belief.probability, belief.outside, pods(belief.probability.size(), search));
  }
  EXPECT_NEAR(sum(belief.probability) + belief.outside, 1, 1e-12);
}

TEST(Update, counts_the_cumulative_success) {
  const grid::Cell cell = grid::grid("gars").cell("006AG39");
  Belief belief = make_belief({cell}, {0.5});
  belief = updated(belief, std::array{0.5}).belief;
  EXPECT_DOUBLE_EQ(belief.cumulative_success, 0.25);
  const Updated again = updated(belief, std::array{0.5});
  EXPECT_NEAR(again.success, 1.0 / 6, 1e-15);                  // half of 0.25 / 0.75
  EXPECT_NEAR(again.belief.cumulative_success, 0.375, 1e-15);  // 0.5 x 0.75
}

TEST(Update, refuses_and_changes_nothing) {
  std::array probability{0.5, 0.5};
  double outside = 0;
  EXPECT_THROW(update(probability, outside, std::array{1.0, 1.0}), Error);
  EXPECT_THROW(update(probability, outside, std::array{1.1, 0.0}), Error);
  EXPECT_THROW(update(probability, outside, std::array{-0.1, 0.0}), Error);
  EXPECT_THROW(update(probability, outside, std::array{std::nan(""), 0.0}), Error);
  EXPECT_THROW(update(probability, outside, std::array{0.5}), Error);
  EXPECT_EQ(probability, (std::array{0.5, 0.5}));
  EXPECT_EQ(outside, 0);
}

}  // namespace
}  // namespace sweepwright::belief
