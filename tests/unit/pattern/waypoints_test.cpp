#include "sweepwright/pattern/waypoints.hpp"

#include <gtest/gtest.h>

#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;

class WaypointsCheck : public testing::TestWithParam<test::CheckRow> {};

TEST_P(WaypointsCheck, LegsAreShortestLines) {
  const test::CheckRow& row = GetParam();
  const Pattern pattern =
      make_waypoint_pattern({{at(row.number("from_latitude_deg"), row.number("from_longitude_deg")),
                              at(row.number("to_latitude_deg"), row.number("to_longitude_deg"))}});
  ASSERT_EQ(pattern.legs.size(), 1u);
  EXPECT_NEAR(pattern.legs[0].line.length.metres(), row.number("distance_m"), 0.001);
  EXPECT_NEAR(pattern.legs[0].line.start_track.degrees(), row.number("track_deg"), 1e-5);
}

INSTANTIATE_TEST_SUITE_P(Published, WaypointsCheck,
                         testing::ValuesIn(test::check_rows(
                             "pattern/waypoints.csv",
                             {"from_latitude_deg", "from_longitude_deg", "to_latitude_deg",
                              "to_longitude_deg", "distance_m", "track_deg"})),
                         test::RowName());

TEST(Waypoints, KeepTheOrderOfTheRoute) {
  const Path route{at(38, -117), at(38.2, -117), at(38.2, -117.3), at(38.1, -117.3), at(38, -117)};
  const Pattern pattern = make_waypoint_pattern({route});
  EXPECT_EQ(path(pattern), route);
  EXPECT_EQ(search_leg_count(pattern), 4);
  EXPECT_EQ(pattern.first_turn, Turn::left);
  EXPECT_EQ(pattern.spacing, Length());
  EXPECT_EQ(designator(pattern), "");
}

TEST(Waypoints, DropPlacesThatStandTwice) {
  EXPECT_EQ(make_waypoint_pattern({{at(0, 0), at(0, 0), at(0, 1)}}).legs.size(), 1u);
}

TEST(Waypoints, RefuseWhatCannotBeFlown) {
  EXPECT_THROW(make_waypoint_pattern({{at(0, 0)}}), Error);
  EXPECT_THROW(make_waypoint_pattern({{at(0, 0), at(0, 0)}}), Error);
  EXPECT_THROW(make_waypoint_pattern({{at(0, 0), at(0, 1)}, Length()}), Error);
}

}  // namespace
}  // namespace sweepwright::pattern
