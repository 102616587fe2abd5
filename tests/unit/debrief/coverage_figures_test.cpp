#include "sweepwright/debrief/coverage_figures.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/flown_raster.hpp"
#include "support/ground.hpp"

namespace sweepwright::debrief {
namespace {

using sweep::DetectionLaw;
using test::metres;

/// One pass 400 m wide up the middle of a square of 2 km.
CoverageMap one_pass() {
  return test::coverage_of(test::square_frame(Length::metres(2000), Length::metres(50)),
                           {{metres(0, -5000), metres(0, 5000), Length::metres(400)}});
}

// By hand: 400 m of 2,000 m are swept; 2 km of track x 400 m on 4 square km are a coverage of 0.2.
TEST(CoverageFigures, of_one_pass_are_those_worked_out_by_hand) {
  const CoverageMap map = one_pass();
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < map.frame.cells(); ++i) all.push_back(i);
  const auto figures = coverage_figures(map, all, DetectionLaw::definite_range);
  ASSERT_TRUE(figures);
  EXPECT_NEAR(figures->area.square_kilometres(), 4, 1e-9);
  EXPECT_NEAR(figures->swept_share, 0.2, 1e-9);
  EXPECT_NEAR(figures->pod, 0.2, 1e-9);
  EXPECT_NEAR(figures->passes, 0.2, 1e-9);
  EXPECT_NEAR(figures->effort.square_metres(), 800'000, 1e-3);
  EXPECT_NEAR(figures->coverage, 0.2, 1e-9);
  EXPECT_NEAR(figures->nearest.value().metres(), 25, 1e-3);
  const auto exponential = coverage_figures(map, all, DetectionLaw::exponential);
  EXPECT_NEAR(exponential->pod, 1 - std::exp(-0.2), 1e-9);  // P2
}

TEST(CoverageFigures, P1_the_mean_lies_between_the_least_and_the_most) {
  const CoverageMap map = one_pass();
  std::vector<std::size_t> some;
  for (std::size_t i = 0; i < map.frame.cells(); i += 7) some.push_back(i);
  for (const DetectionLaw law : {DetectionLaw::inverse_cube, DetectionLaw::definite_range}) {
    const auto figures = coverage_figures(map, some, law);
    EXPECT_LE(figures->least_pod, figures->pod);
    EXPECT_LE(figures->pod, figures->most_pod);
  }
  EXPECT_FALSE(coverage_figures(map, {}, DetectionLaw::inverse_cube));
}

TEST(CoverageFigures, ground_smaller_than_a_cell_has_the_cell_of_its_middle) {
  const CoverageFrame frame = test::square_frame(Length::metres(2000), Length::metres(50));
  const Position place = cell_centre(frame, 123);
  const Region small = test::rectangle(travel(place, {}, Length::metres(15)).position, {},
                                       Length::metres(10), Length::metres(10));
  EXPECT_EQ(cells_of(frame, small), std::vector<std::size_t>{123});
  const Region off = test::rectangle(travel(place, {}, Length::kilometres(5)).position, {},
                                     Length::metres(10), Length::metres(10));
  EXPECT_TRUE(cells_of(frame, off).empty());
}

}  // namespace
}  // namespace sweepwright::debrief
