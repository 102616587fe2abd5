#include "sweepwright/debrief/holes.hpp"

#include <gtest/gtest.h>

#include <numeric>

#include "support/flown_raster.hpp"
#include "support/ground.hpp"

namespace sweepwright::debrief {
namespace {

using sweep::Probability;

/// A map drawn in letters, the top row first: `.` has the POD, `x` has none.
CoverageMap drawn(const std::vector<std::string>& rows) {
  const CoverageFrame frame{
      LocalPlane(test::at(60, -180)), {}, Length::metres(100), rows.front().size(), rows.size()};
  CoverageMap map{frame, {}, {}, {}, {}, {}};
  for (std::size_t row = rows.size(); row-- > 0;) {
    for (const char c : rows[row]) map.potential.push_back(c == '.' ? 3 : 0);
  }
  return map;
}

std::vector<std::size_t> all_cells(const CoverageMap& map) {
  std::vector<std::size_t> cells(map.frame.cells());
  std::iota(cells.begin(), cells.end(), std::size_t{0});
  return cells;
}

HoleRule half() {
  return {sweep::DetectionLaw::inverse_cube, Probability(0.5), Area()};
}

TEST(Holes, are_cells_that_share_a_side_the_largest_first) {
  const CoverageMap map = drawn({"xx....",  //
                                 "xx..x.",  //
                                 "..x...",  //
                                 "...xxx"});
  const std::vector<Hole> found = holes(map, all_cells(map), half());
  ASSERT_EQ(found.size(), 4U);
  EXPECT_EQ(found[0].cells, 4U);
  EXPECT_EQ(found[0].region.polygons[0].outer.size(), 4U);
  EXPECT_EQ(found[1].cells, 3U);
  EXPECT_EQ(found[2].cells, 1U);
  EXPECT_NEAR(found[0].area.square_metres(), 40'000, 4);
  EXPECT_EQ(found[0].mean_pod, 0);
}

TEST(Holes, P1_areas_add_up_to_all_cells_under_the_wanted_pod) {
  test::Dice dice(3);
  std::vector<std::string> rows(40, std::string(50, '.'));
  double cells = 0;
  for (std::string& row : rows) {
    for (char& c : row) {
      if (dice.between(0, 1) < 0.55) {
        c = 'x';
        ++cells;
      }
    }
  }
  const CoverageMap map = drawn(rows);
  double square_metres = 0;
  std::size_t last = map.frame.cells();
  for (const Hole& hole : holes(map, all_cells(map), half())) {
    EXPECT_LE(hole.cells, last);  // P2
    last = hole.cells;
    EXPECT_NEAR(hole.area.square_metres() / (10'000.0 * static_cast<double>(hole.cells)), 1, 1e-5);
    square_metres += hole.area.square_metres();
  }
  EXPECT_NEAR(square_metres / (10'000 * cells), 1, 1e-5);
}

TEST(Holes, ground_with_the_pod_inside_is_a_hole_of_the_polygon) {
  const CoverageMap map = drawn({"xxxxx",  //
                                 "x.x.x",  //
                                 "xx.xx",  //
                                 "xxxxx"});
  const std::vector<Hole> found = holes(map, all_cells(map), half());
  ASSERT_EQ(found.size(), 1U);
  const Polygon& polygon = found.front().region.polygons.front();
  EXPECT_EQ(polygon.outer.size(), 4U);
  EXPECT_EQ(polygon.holes.size(), 3U);
  // A region by the rules of the house: rings that do not cross.
  EXPECT_EQ(make_region({polygon}).polygons.front().holes.size(), 3U);
}

TEST(Holes, small_ones_are_left_out_on_request) {
  const CoverageMap map = drawn({"xx.x"});
  HoleRule rule = half();
  rule.least = Area::square_metres(15'000);
  EXPECT_EQ(holes(map, all_cells(map), rule).size(), 1U);
  rule.least = Area::square_metres(25'000);
  EXPECT_TRUE(holes(map, all_cells(map), rule).empty());
}

TEST(Holes, none_where_the_whole_area_has_the_pod) {
  const CoverageMap map = drawn({"...", "..."});
  EXPECT_TRUE(holes(map, all_cells(map), half()).empty());
}

}  // namespace
}  // namespace sweepwright::debrief
