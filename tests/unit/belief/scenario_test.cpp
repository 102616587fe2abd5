// Scenarios, areas, regions with votes, bands and rasters: shares by hand, and the whole sums to 1.
#include "sweepwright/belief/scenario.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/probability_sum.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::belief {
namespace {

using test::at;

Belief over(const std::vector<Scenario>& scenarios, std::string_view system,
            std::string_view level) {
  const grid::Grid& grid = grid::grid(system);
  return make_belief(scenarios, grid, grid.level(level));
}

std::map<std::string, double> by_name(const Belief& belief) {
  std::map<std::string, double> found;
  for (std::size_t i = 0; i < belief.cells.size(); ++i) {
    found[belief.cells[i].name] = belief.probability[i];
  }
  return found;
}

Region box(double south, double north, double west, double east) {
  return grid::outline(grid::LatLonBox{Angle::degrees(south), Angle::degrees(north),
                                       Angle::degrees(west), Angle::degrees(east)});
}

std::vector<Scenario> two_scenarios(Position place) {
  const Position further =
      travel(place, TrueDirection::degrees(70), Length::kilometres(60)).position;
  return {{3, "went on", Datum{place, Length::nautical_miles(5)}},
          {1, "turned back",
           Patches{equal_chances(
               test::rectangle(further, {}, Length::kilometres(30), Length::kilometres(20)))}}};
}

TEST(Scenarios, P1_sum_to_one_wherever_the_earth_is_awkward) {
  for (const Position place : test::awkward_places()) {
    for (const auto& [system, level] :
         {std::pair{"gars", "15min"}, std::pair{"mgrs", "10km"}, std::pair{"georef", "1deg"}}) {
      const Belief belief = over(two_scenarios(place), system, level);
      EXPECT_NEAR(sum(belief.probability) + belief.outside, 1, 1e-12) << system;
      EXPECT_LT(belief.outside, 0.75 * 1.0001e-3) << system;
      EXPECT_GE(belief.outside, 0) << system;
    }
  }
}

TEST(Scenarios, P2_their_order_does_not_matter) {
  std::vector<Scenario> scenarios = two_scenarios(at(38, -117));
  const auto forward = by_name(over(scenarios, "gars", "15min"));
  std::reverse(scenarios.begin(), scenarios.end());
  const auto backward = by_name(over(scenarios, "gars", "15min"));
  ASSERT_EQ(forward.size(), backward.size());
  for (const auto& [name, probability] : forward) {
    EXPECT_NEAR(backward.at(name), probability, 1e-15) << name;
  }
}

TEST(Scenarios, cells_come_in_grid_order) {
  const Belief belief = over(two_scenarios(at(38, -117)), "gars", "15min");
  for (std::size_t i = 1; i < belief.cells.size(); ++i) {
    const grid::LatLonBox& a = belief.cells[i - 1].box.value();
    const grid::LatLonBox& b = belief.cells[i].box.value();
    EXPECT_TRUE(a.north > b.north || (a.north == b.north && a.west < b.west));
  }
}

TEST(Scenarios, weights_are_relative) {
  const Source area = equal_chances(box(38, 38.25, -117, -116.5));
  const Source other = equal_chances(box(38, 38.25, -116.5, -116));
  const auto cells = by_name(over({{3, "", area}, {1, "", other}}, "gars", "15min"));
  ASSERT_EQ(cells.size(), 4U);
  std::vector<double> values;
  for (const auto& [name, probability] : cells) values.push_back(probability);
  EXPECT_THAT(values, testing::UnorderedElementsAre(
                          testing::DoubleNear(0.375, 1e-6), testing::DoubleNear(0.375, 1e-6),
                          testing::DoubleNear(0.125, 1e-6), testing::DoubleNear(0.125, 1e-6)));
}

TEST(Scenarios, refuses_weights_that_say_nothing) {
  const Source area = equal_chances(box(38, 38.25, -117, -116.5));
  EXPECT_THROW(over({{0, "", area}}, "gars", "15min"), Error);
  EXPECT_THROW(over({{-1, "", area}, {2, "", area}}, "gars", "15min"), Error);
  EXPECT_THROW(over({{std::nan(""), "", area}}, "gars", "15min"), Error);
  EXPECT_THROW(over({}, "gars", "15min"), Error);
}

TEST(Scenarios, a_belief_wholly_outside_the_box_is_said_so) {
  const grid::Grid& grid = grid::grid("gars");
  const std::vector<Scenario> far{{1, "", Datum{at(38, -117), Length::nautical_miles(5)}}};
  const grid::LatLonBox elsewhere{Angle::degrees(-10), Angle::degrees(-9), Angle::degrees(20),
                                  Angle::degrees(21)};
  try {
    make_belief(far, grid, grid.level("30min"), elsewhere);
    FAIL();
  } catch (const Error& error) {
    EXPECT_THAT(error.what(), testing::HasSubstr("outside the cells"));
  }
}

TEST(Scenarios, a_box_states_what_lies_outside) {
  // Half of a normal lies north of its datum's parallel, but for the parallel's bend.
  const grid::Grid& grid = grid::grid("gars");
  const Belief belief =
      make_belief({{1, "", Datum{at(0, 20), Length::nautical_miles(5)}}}, grid, grid.level("30min"),
                  {Angle::degrees(0), Angle::degrees(2), Angle::degrees(18), Angle::degrees(22)});
  EXPECT_NEAR(belief.outside, 0.5, 1e-9);
}

TEST(Area, is_shared_by_ground) {
  // A box of two whole cells and two halves of cells, on the equator.
  const auto cells =
      by_name(over({{1, "", equal_chances(box(0, 0.25, 10, 10.625))}}, "gars", "15min"));
  ASSERT_EQ(cells.size(), 3U);
  double least = 1;
  for (const auto& [name, probability] : cells) least = std::min(least, probability);
  // 0.125 of 0.625 degrees; the region's parallels are shortest lines within half a metre.
  EXPECT_NEAR(least, 0.2, 1e-5);
}

TEST(Votes, are_averaged_with_the_share_outside_kept) {
  // Two planners, regions A and B: (0.5, 0.3) and (0.2, 0.6): A 0.35, B 0.45, outside 0.2.
  const std::vector<Region> regions{box(38, 38.25, -117, -116.75), box(38, 38.25, -116.5, -116.25)};
  const Patches patches = consensus(regions, {{"first", {0.5, 0.3}}, {"second", {0.2, 0.6}}});
  EXPECT_NEAR(patches.patches[0].share, 0.35, 1e-15);
  EXPECT_NEAR(patches.patches[1].share, 0.45, 1e-15);
  const Belief belief = over({{1, "", patches}}, "gars", "15min");
  EXPECT_NEAR(belief.outside, 0.2, 1e-12);
  EXPECT_THAT(belief.probability, testing::UnorderedElementsAre(testing::DoubleNear(0.35, 1e-9),
                                                                testing::DoubleNear(0.45, 1e-9)));
}

TEST(Votes, refuses_what_is_no_vote) {
  const std::vector<Region> regions{box(38, 38.25, -117, -116.75)};
  EXPECT_THROW(consensus(regions, {}), Error);
  EXPECT_THROW(consensus(regions, {{"a", {0.5, 0.5}}}), Error);
  EXPECT_THROW(consensus(regions, {{"a", {1.5}}}), Error);
  EXPECT_THROW(consensus({regions[0], regions[0]}, {{"a", {0.6, 0.6}}}), Error);
}

// US National SAR Manual Volume I (1991), paragraph 800.B [seen]: about three quarters within 5
// miles of the proposed course. What the bands leave is outside.
TEST(Bands, hold_their_stated_share) {
  const RouteBands bands{{at(0, 10), at(0, 12)}, {{Length::nautical_miles(5), 0.75}}};
  const Belief belief = over({{1, "", bands}}, "gars", "5min");
  EXPECT_NEAR(belief.outside, 0.25, 1e-9);
  for (const grid::Cell& cell : belief.cells) {
    EXPECT_LT(std::abs(grid::label_point(cell).latitude().degrees()), 5.0 / 60 + 2.5 / 60 + 1e-3);
  }
}

TEST(Bands, lie_on_both_sides_from_the_track_outward) {
  const RouteBands bands{{at(0, 10), at(0, 12)},
                         {{Length::nautical_miles(5), 0.5}, {Length::nautical_miles(10), 0.3}}};
  const Belief belief = over({{1, "", bands}}, "gars", "15min");
  double north = 0;
  for (std::size_t i = 0; i < belief.cells.size(); ++i) {
    if (grid::label_point(belief.cells[i]).latitude() > Angle()) north += belief.probability[i];
  }
  EXPECT_NEAR(north, 0.4, 1e-5);
  EXPECT_NEAR(belief.outside, 0.2, 1e-9);
  const RouteBands falling{bands.route,
                           {{Length::nautical_miles(10), 0.5}, {Length::nautical_miles(5), 0.3}}};
  EXPECT_THROW(over({{1, "", falling}}, "gars", "15min"), Error);
}

TEST(Stated, cells_of_another_grid_are_shared_by_ground) {
  const grid::Grid& gars = grid::grid("gars");
  const grid::Cell coarse = gars.cell("006AG");
  const Belief belief = over({{1, "", stated({{coarse, 0.8}})}}, "gars", "15min");
  ASSERT_EQ(belief.cells.size(), 4U);
  EXPECT_NEAR(belief.outside, 0.2, 1e-12);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(belief.probability[i], 0.8 * (belief.area[i] / grid::area(coarse)), 1e-9);
  }
  EXPECT_THROW(stated({{coarse, 0.8}, {coarse, 0.8}}), Error);
}

TEST(Stated, boxes_across_the_antimeridian_are_shared) {
  const grid::LatLonBox box{Angle::degrees(10), Angle::degrees(10.25), Angle::degrees(179.875),
                            Angle::degrees(-179.875)};
  const Belief belief = over({{1, "", Patches{{{box, 1}}}}}, "gars", "15min");
  ASSERT_EQ(belief.cells.size(), 2U);
  EXPECT_NEAR(belief.probability[0], 0.5, 1e-12);
  EXPECT_NEAR(belief.outside, 0, 1e-12);
}

}  // namespace
}  // namespace sweepwright::belief
