#include "sweepwright/effort/optimal.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numbers>
#include <numeric>
#include <random>
#include <sstream>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::effort {
namespace {

using testing::HasSubstr;

struct Belief {
  std::vector<double> probabilities;
  std::vector<Area> areas;
  Cells cells() const { return {probabilities, areas}; }
};

std::vector<double> numbers(const std::string& text) {
  std::istringstream in(text);
  return {std::istream_iterator<double>(in), {}};
}

Belief belief_of(const test::CheckRow& row) {
  Belief belief{numbers(row.text("probabilities")), {}};
  for (const double area : numbers(row.text("areas_nm2"))) {
    belief.areas.push_back(Area::square_nautical_miles(area));
  }
  return belief;
}

Area spent(const Belief& belief, const Allocation& allocation) {
  Area total;
  for (std::size_t i = 0; i < belief.areas.size(); ++i) {
    total += belief.areas[i] * allocation.coverages[i];
  }
  return total;
}

/// The threshold condition (Karush, Kuhn and Tucker), which for this concave problem is proof of
/// the optimum (Stone, Theory of Optimal Search, 1975, chapter 2; from memory): what a further bit
/// of effort adds is the threshold wherever there is effort, and no more elsewhere.
void expect_threshold_condition(const Belief& belief, const Allocation& allocation, Area effort) {
  EXPECT_NEAR(spent(belief, allocation) / effort, 1, 1e-12);
  double worst_with = 0;
  double worst_without = 0;
  for (std::size_t i = 0; i < belief.areas.size(); ++i) {
    const double coverage = allocation.coverages[i];
    ASSERT_GE(coverage, 0);
    const double gain = belief.probabilities[i] / belief.areas[i].square_metres() *
                        std::exp(-coverage) / allocation.threshold_per_m2;
    if (coverage > 0) {
      worst_with = std::max(worst_with, std::abs(gain - 1));
    } else {
      worst_without = std::max(worst_without, gain - 1);
    }
  }
  EXPECT_LT(worst_with, 1e-12);
  EXPECT_LT(worst_without, 1e-12);
  EXPECT_NEAR(allocation.pos.value(),
              probability_of_success(belief.probabilities, allocation.coverages).value(), 1e-12);
}

/// A circular normal about the middle of a square of cells that reaches `reach` deviations.
Belief circular_normal(int side, Length deviation, double reach) {
  const double step = 2 * reach / side;
  std::vector<double> strip;
  for (int i = 0; i < side; ++i) {
    const double low = -reach + i * step;
    strip.push_back(0.5 *
                    (std::erf((low + step) / std::sqrt(2.0)) - std::erf(low / std::sqrt(2.0))));
  }
  Belief belief;
  for (const double across : strip) {
    for (const double along : strip) belief.probabilities.push_back(across * along);
  }
  belief.areas.assign(belief.probabilities.size(), (step * deviation) * (step * deviation));
  return belief;
}

class KnownOptimum : public testing::TestWithParam<test::CheckRow> {};

TEST_P(KnownOptimum, is_found) {
  const Belief belief = belief_of(GetParam());
  const Area effort = Area::square_nautical_miles(GetParam().number("effort_nm2"));
  const Allocation found = optimal_allocation(belief.cells(), effort);
  const std::vector<double> expected = numbers(GetParam().text("coverages"));
  ASSERT_EQ(found.coverages.size(), expected.size());
  constexpr double kPrinted = 2e-5;  // SLSQP's own error, at five decimals
  for (std::size_t i = 0; i < expected.size(); ++i) {
    EXPECT_NEAR(found.coverages[i], expected[i], kPrinted);
  }
  EXPECT_NEAR(found.pos.value(), GetParam().number("pos"), 1e-6);
  expect_threshold_condition(belief, found, effort);
  EXPECT_NEAR(effort_for(belief.cells(), found.pos) / effort, 1, 1e-9);  // P3
}

const std::vector<std::string> kColumns{"probabilities", "areas_nm2", "effort_nm2", "coverages",
                                        "pos"};
INSTANTIATE_TEST_SUITE_P(ByHand, KnownOptimum,
                         testing::ValuesIn(test::check_rows("effort/optimal_by_hand.csv",
                                                            kColumns)),
                         test::RowName());
INSTANTIATE_TEST_SUITE_P(Scipy, KnownOptimum,
                         testing::ValuesIn(test::check_rows("effort/optimal_scipy.csv", kColumns)),
                         test::RowName());

// Koopman's closed form: effort Z on a circular normal of deviation s is best spent within r0, r0^4
// = 4 s^2 Z / pi, with POS = 1 - (1 + q) exp(-q), q = r0^2 / (2 s^2), and coverage (r0^2 - r^2) /
// (2 s^2) at r. Source: B. O. Koopman, Search and Screening (1946), chapter 3; L. D. Stone, Theory
// of Optimal Search (1975), example 2.2.7 [from memory].
TEST(CircularNormal, agrees_with_the_closed_form_within_a_thousandth) {
  const Length deviation = Length::nautical_miles(3);
  constexpr int kSide = 600;
  constexpr double kReach = 6;
  const Belief belief = circular_normal(kSide, deviation, kReach);
  for (const double ratio : {0.2, 1.0, 5.0, 20.0, 100.0}) {  // Z / s^2
    const Area effort = deviation * deviation * ratio;
    const Allocation found = optimal_allocation(belief.cells(), effort);
    const double q = std::sqrt(ratio / std::numbers::pi);
    const double pos = 1 - (1 + q) * std::exp(-q);
    EXPECT_NEAR(found.pos.value() / pos, 1, 1e-3) << ratio;
    // The middle of the square is a corner of four cells.
    EXPECT_NEAR(found.coverages[(kSide + 1) * kSide / 2] / q, 1, 1e-2) << ratio;
    EXPECT_NEAR(effort_for(belief.cells(), sweep::Probability(pos)) / effort, 1, 2e-3) << ratio;
    expect_threshold_condition(belief, found, effort);
  }
}

Belief random_belief(std::size_t size, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> uniform(0, 1);
  Belief belief;
  double total = 0;
  for (std::size_t i = 0; i < size; ++i) {
    // Over thirty powers of ten, and a share of cells without any.
    const double p = uniform(random) < 0.1 ? 0 : std::pow(10, -30 * uniform(random));
    belief.probabilities.push_back(p);
    belief.areas.push_back(Area::square_metres(std::pow(10, 6 * uniform(random))));
    total += p;
  }
  for (double& p : belief.probabilities) p /= total;
  return belief;
}

TEST(Optimal, P1_threshold_condition_holds_over_a_million_cells) {
  const Belief belief = random_belief(1'000'000, 7);
  Area all;
  for (const Area area : belief.areas) all += area;
  for (const double share : {1e-9, 1e-3, 1.0, 100.0}) {
    const Area effort = all * share;
    expect_threshold_condition(belief, optimal_allocation(belief.cells(), effort), effort);
  }
}

RC_GTEST_PROP(Optimal, P1_is_not_beaten_by_moving_effort, ()) {
  const auto size = *rc::gen::inRange<std::size_t>(2, 30);
  const Belief belief = random_belief(size, *rc::gen::arbitrary<unsigned>());
  const Area effort = Area::square_metres(*rc::gen::inRange(1, 10'000'000));
  Allocation found = optimal_allocation(belief.cells(), effort);
  const std::size_t from = *rc::gen::inRange<std::size_t>(0, size);
  const std::size_t to = *rc::gen::inRange<std::size_t>(0, size);
  const Area moved =
      belief.areas[from] * (found.coverages[from] * *rc::gen::inRange(1, 100) / 100.0);
  found.coverages[from] -= moved / belief.areas[from];
  found.coverages[to] += moved / belief.areas[to];
  const double moved_pos = probability_of_success(belief.probabilities, found.coverages).value();
  RC_ASSERT(moved_pos <= found.pos.value() + 1e-12);
}

RC_GTEST_PROP(Optimal, P2_more_effort_never_lowers_a_coverage, ()) {
  const Belief belief = random_belief(40, *rc::gen::arbitrary<unsigned>());
  const int less = *rc::gen::inRange(0, 5'000'000);
  const int more = less + *rc::gen::inRange(0, 5'000'000);
  const Allocation low = optimal_allocation(belief.cells(), Area::square_metres(less));
  const Allocation high = optimal_allocation(belief.cells(), Area::square_metres(more));
  for (std::size_t i = 0; i < 40; ++i) {
    RC_ASSERT(high.coverages[i] >= low.coverages[i] - 1e-12 * (1 + low.coverages[i]));
  }
  RC_ASSERT(high.pos.value() >= low.pos.value() - 1e-12);
}

TEST(Optimal, P4_does_not_depend_on_the_order_of_cells) {
  Belief belief = random_belief(1000, 3);
  const Area effort = Area::square_metres(1e6);
  const Allocation forth = optimal_allocation(belief.cells(), effort);
  std::reverse(belief.probabilities.begin(), belief.probabilities.end());
  std::reverse(belief.areas.begin(), belief.areas.end());
  const Allocation back = optimal_allocation(belief.cells(), effort);
  for (std::size_t i = 0; i < 1000; ++i) {
    EXPECT_NEAR(forth.coverages[i], back.coverages[999 - i], 1e-12);
  }
}

TEST(Optimal, equal_cells_are_searched_equally) {
  const Belief belief{std::vector<double>(10, 0.1),
                      std::vector<Area>(10, Area::square_metres(100))};
  const Allocation found = optimal_allocation(belief.cells(), Area::square_metres(500));
  for (const double coverage : found.coverages) EXPECT_NEAR(coverage, 0.5, 1e-14);
  EXPECT_NEAR(found.pos.value(), 1 - std::exp(-0.5), 1e-14);
  EXPECT_EQ(optimal_allocation(belief.cells(), Area()).pos.value(), 0);
}

template <typename Call>
std::string fault(Call call, ErrorCode code) {
  try {
    call();
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), code);
    return error.what();
  }
  return "no error";
}

TEST(OptimalErrors, name_the_cell_and_what_was_expected) {
  const Area one = Area::square_metres(1);
  const auto allocate = [&](std::vector<double> p, std::vector<Area> a, Area effort) {
    optimal_allocation({p, a}, effort);
  };
  EXPECT_THAT(fault(
                  [&] {
                    allocate({0.5, -0.1}, {one, one}, one);
                  },
                  ErrorCode::value),
              HasSubstr("cell 2: the probability is -0.1, expected 0 to 1"));
  EXPECT_THAT(fault([&] { allocate({std::nan("")}, {one}, one); }, ErrorCode::value),
              HasSubstr("cell 1"));
  EXPECT_THAT(fault([&] { allocate({0.5}, {Area()}, one); }, ErrorCode::value),
              HasSubstr("the area is 0 square metres"));
  EXPECT_THAT(fault(
                  [&] {
                    allocate({0.7, 0.7}, {one, one}, one);
                  },
                  ErrorCode::value),
              HasSubstr("add up to 1.4"));
  EXPECT_THAT(fault(
                  [&] {
                    allocate({0, 0}, {one, one}, one);
                  },
                  ErrorCode::impossible),
              HasSubstr("wholly outside"));
  EXPECT_THAT(fault([&] { allocate({}, {}, one); }, ErrorCode::impossible),
              HasSubstr("wholly outside"));
  EXPECT_THAT(fault([&] { allocate({0.5}, {one}, -one); }, ErrorCode::value),
              HasSubstr("search effort"));
  EXPECT_THAT(fault(
                  [&] {
                    allocate({0.5}, {one, one}, one);
                  },
                  ErrorCode::value),
              HasSubstr("1 probabilities and 2 areas"));
}

TEST(OptimalErrors, a_pos_that_no_effort_gives) {
  const Belief belief{{0.5, 0.3}, {Area::square_metres(1), Area::square_metres(2)}};
  for (const double wanted : {0.8, 0.9, 1.0}) {
    EXPECT_THAT(fault([&] { effort_for(belief.cells(), sweep::Probability(wanted)); },
                      ErrorCode::impossible),
                HasSubstr("the cells hold 0.8000 in all"));
  }
  EXPECT_EQ(effort_for(belief.cells(), sweep::Probability(0)), Area());
  EXPECT_GT(effort_for(belief.cells(), sweep::Probability(0.799999)), Area());
}

}  // namespace
}  // namespace sweepwright::effort
