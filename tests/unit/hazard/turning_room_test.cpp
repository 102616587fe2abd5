// Promises of turning_room.hpp: a valley between two straight walls, and open ground.
#include "sweepwright/hazard/turning_room.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/flights.hpp"

namespace sweepwright::hazard {
namespace {

using test::at;
using testing::HasSubstr;
using testing::IsEmpty;

const Position kMiddle = at(38.25, -117.0);
const CrewName kCrew{"ALFA", "A1"};

/// Flat ground at 1,000 m between walls of 2,000 m that stand so far north and south of a line.
terrain::ElevationTile valley(Length north, Length south) {
  return test::ground_round(
      kMiddle, 1.0 / 1200,
      [=](Position place) {
        const Length up =
            geodesic(Position::at(kMiddle.latitude(), place.longitude()), place).length;
        const bool is_north = place.latitude() > kMiddle.latitude();
        return up > (is_north ? north : south) ? 2000 : 1000;
      },
      0.1);
}

flight::FlownPattern up_the_valley() {
  return test::one_leg(
      travel(kMiddle, TrueDirection::degrees(270), Length::nautical_miles(3)).position,
      Length::nautical_miles(6));
}

std::vector<Finding> found(terrain::ElevationTile tile, Length altitude) {
  const terrain::ElevationModel model({std::move(tile)});
  const flight::FlownPattern flown = up_the_valley();
  TerrainTask task;
  task.altitude = altitude;
  task.half_width = Length::metres(200);
  task.aircraft = test::aircraft(Speed::knots(90));
  return turning_room_findings(model, flown, check_terrain(model, flown, task), kCrew);
}

// 90 kt at 3 degrees a second: the circle is 2 * 46.3 / 0.05236 m = 1,769 m wide.
TEST(TurningRoom, turn_is_the_circle_in_calm_air) {
  const flight::FlownPattern flown = up_the_valley();
  EXPECT_NEAR(turn_width(flown.legs[0], test::aircraft(Speed::knots(90))).metres(), 1769, 1);
}

TEST(TurningRoom, a_valley_narrower_than_a_turn_is_a_caution) {
  const std::vector<Finding> findings =
      found(valley(Length::metres(700), Length::metres(600)), Length::metres(1500));
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::caution);
  EXPECT_EQ(findings[0].kind, Kind::turning_room);
  // The room is 1300 m; looking across takes whole steps of 100 m and cells of 93 m.
  EXPECT_THAT(findings[0].text, testing::ContainsRegex("the valley is 0[.](5[5-9]|6|70)"));
  EXPECT_THAT(findings[0].text, HasSubstr("a turn takes 0.95 NM"));
}

TEST(TurningRoom, a_wide_valley_and_a_height_above_its_walls_are_room_enough) {
  EXPECT_THAT(found(valley(Length::metres(1200), Length::metres(1100)), Length::metres(1500)),
              IsEmpty());
  EXPECT_THAT(found(valley(Length::metres(700), Length::metres(600)), Length::metres(2400)),
              IsEmpty());
}

TEST(TurningRoom, open_ground_to_one_side_is_room_enough) {
  EXPECT_THAT(found(valley(Length::metres(700), Length::kilometres(30)), Length::metres(1500)),
              IsEmpty());
}

TEST(TurningRoom, ground_that_is_not_known_is_said) {
  terrain::ElevationTile tile = valley(Length::metres(700), Length::kilometres(30));
  const int row = tile.rows / 2 + 14;  // 14 posts of 93 m south of the leg
  tile.heights_m[tile.index(row, tile.columns / 2)] = test::kGap;
  const std::vector<Finding> findings = found(std::move(tile), Length::metres(1500));
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::not_checked);
}

}  // namespace
}  // namespace sweepwright::hazard
