// A belief is made only of probabilities, and sums to 1 with what lies outside.
#include "sweepwright/belief/belief.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/probability_sum.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::belief {
namespace {

using testing::HasSubstr;

std::vector<grid::Cell> cells(std::size_t count) {
  std::vector<grid::Cell> all =
      grid::grid("gars").cells_touching(grid::LatLonBox{Angle::degrees(38), Angle::degrees(39),
                                                        Angle::degrees(-118), Angle::degrees(-117)},
                                        grid::grid("gars").level("5min"));
  all.resize(count);
  return all;
}

std::string message_of(const std::function<void()>& action) {
  try {
    action();
  } catch (const Error& error) {
    return error.what();
  }
  return "no error";
}

TEST(Belief, outside_is_what_the_cells_leave) {
  const Belief belief = make_belief(cells(3), {0.25, 0.5, 0.125});
  EXPECT_EQ(belief.outside, 0.125);
  EXPECT_EQ(belief.cumulative_success, 0);
}

TEST(Belief, has_the_areas_of_its_cells) {
  const Belief belief = make_belief(cells(2), {0.25, 0.5});
  ASSERT_EQ(belief.area.size(), 2U);
  EXPECT_EQ(belief.area[1], grid::area(belief.cells[1]));
}

TEST(Belief, P1_sums_within_tolerance_are_brought_to_one) {
  for (const double third : {0.333333333, 0.3333334}) {
    const Belief belief = make_belief(cells(3), {third, third, third});
    EXPECT_NEAR(sum(belief.probability) + belief.outside, 1, 1e-12);
  }
  const Belief stated = make_belief(cells(2), {0.3, 0.3}, 0.4000005);
  EXPECT_NEAR(sum(stated.probability) + stated.outside, 1, 1e-12);
}

TEST(Belief, refuses_what_is_no_probability_and_names_the_cell) {
  for (const double wrong : {1.5, -0.1, std::nan("")}) {
    EXPECT_THAT(message_of([&] {
                  make_belief(cells(2), {0.5, wrong});
                }),
                HasSubstr("cell " + cells(2)[1].name));
  }
}

TEST(Belief, refuses_sums_that_are_not_one) {
  EXPECT_THAT(message_of([] { make_belief(cells(2), {0.75, 0.5}); }), HasSubstr("sum to 1.25"));
  EXPECT_THAT(message_of([] { make_belief(cells(2), {0.25, 0.25}, 0.25); }), HasSubstr("not 1"));
  EXPECT_THAT(message_of([] { make_belief(cells(2), {0.25, 0.25}, -0.5); }), HasSubstr("from 0"));
}

TEST(Belief, wholly_outside_is_said_so) {
  EXPECT_THAT(message_of([] { make_belief(cells(2), {0, 0}); }), HasSubstr("outside the cells"));
  EXPECT_THAT(message_of([] { make_belief(cells(2), {0, 0}, 1); }), HasSubstr("outside the cells"));
}

TEST(Belief, refuses_lists_of_different_lengths) {
  EXPECT_THAT(message_of([] { make_belief(cells(2), {1}); }), HasSubstr("2 cells"));
}

}  // namespace
}  // namespace sweepwright::belief
