#include "sweepwright/debrief/coverage_figures.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/flown_raster.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/debrief/grid_coverage.hpp"
#include "sweepwright/debrief/track_ground.hpp"
#include "sweepwright/grid/systems.hpp"

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

// Parts and whole: effort adds up, and the POD of the area is the mean of its cells by their
// ground.
TEST(GridCoverage, P1_cells_of_a_grid_make_up_the_area) {
  const Region area = test::rectangle(test::at(45, 7), TrueDirection::degrees(20),
                                      Length::kilometres(20), Length::kilometres(16));
  const CoverageFrame frame = coverage_frame(area, Length::metres(100));
  CoverageAccumulator accumulator(frame);
  accumulator.add(SweptPiece{test::at(44.9, 6.9), test::at(45.1, 7.1), Length::metres(1500)});
  const CoverageMap map = accumulator.map();
  const grid::Grid& georef = grid::grid("georef");
  const auto cells =
      grid_coverage(map, area, georef, georef.level("1min"), DetectionLaw::inverse_cube);
  EXPECT_EQ(cells.size(), georef.cells_touching(area, georef.level("1min")).size());
  double square_metres = 0;
  double found = 0;
  Area effort;
  for (const GridCellCoverage& one : cells) {
    square_metres += one.figures.area.square_metres();
    found += one.figures.area.square_metres() * one.figures.pod;
    effort += one.figures.effort;
  }
  const auto whole =
      coverage_figures(map, cells_inside(frame, area), DetectionLaw::inverse_cube).value();
  // Cells too small for a middle of the raster's borrow one: a few of eighty thousand.
  EXPECT_NEAR(square_metres / whole.area.square_metres(), 1, 2e-3);
  EXPECT_NEAR(found / square_metres, whole.pod, 2e-3);
  EXPECT_NEAR(effort / whole.effort, 1, 5e-3);
}

TEST(TrackGround, keeps_ends_and_has_all_places_in_the_rectangle) {
  for (const Position place : test::awkward_places()) {
    ThinnedTracks thinned(Length::metres(500));
    Position last = place;
    std::vector<Position> all{place};
    for (int i = 0; i < 100; ++i) {
      const Position next =
          travel(last, TrueDirection::degrees(3 * i), Length::metres(130)).position;
      thinned.add({last, next, Length::metres(100)});
      all.push_back(next);
      last = next;
    }
    const std::vector<Path> paths = thinned.paths();
    ASSERT_EQ(paths.size(), 1U);
    EXPECT_EQ(paths[0].front(), place);
    EXPECT_EQ(paths[0].back(), last);
    EXPECT_LT(paths[0].size(), 35U);
    const Region area = area_round(paths, Length::metres(600));
    for (const Position one : all) EXPECT_TRUE(contains(area, one));
  }
  EXPECT_THROW(area_round({}, Length::metres(1)), Error);
}

}  // namespace
}  // namespace sweepwright::debrief
