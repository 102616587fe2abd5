// Promises of terrain_findings.hpp, and what makes a model look wrong.
#include "sweepwright/hazard/terrain_findings.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/check_table.hpp"
#include "support/flights.hpp"

namespace sweepwright::hazard {
namespace {

using test::at;
using test::kGap;
using testing::HasSubstr;
using testing::IsEmpty;

const Position kMiddle = at(38.25, -117.0);
const CrewName kCrew{"ALFA", "A1"};

terrain::ElevationModel cone_model() {
  return terrain::ElevationModel(
      {test::ground_round(kMiddle, 1.0 / 600, test::Cone{kMiddle, 2000, 0.1})});
}

/// Past the cone's summit, from 4 NM west of it.
flight::FlownPattern over_the_cone(Length length) {
  return test::one_leg(
      travel(kMiddle, TrueDirection::degrees(270), Length::nautical_miles(4)).position, length);
}

std::vector<Finding> found(const terrain::ElevationModel& model, const flight::FlownPattern& flown,
                           TerrainTask task) {
  task.aircraft = test::aircraft(Speed::knots(90));
  return terrain_findings(model, flown, check_terrain(model, flown, task), kCrew);
}

TerrainTask at_altitude(Length altitude) {
  TerrainTask task;
  task.altitude = altitude;
  return task;
}

TEST(TerrainFindings, a_leg_under_the_minimum_must_not_be_flown) {
  const std::vector<Finding> findings = found(
      cone_model(), over_the_cone(Length::nautical_miles(8)), at_altitude(Length::metres(2100)));
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::must_not_fly);
  EXPECT_EQ(findings[0].kind, Kind::terrain);
  EXPECT_EQ(findings[0].crew, "ALFA");
  EXPECT_EQ(findings[0].leg, 1);
  // 100 m are 328 ft, 2000 m are 6562 ft; 7600 ft keep 1,000 ft.
  EXPECT_THAT(findings[0].text, HasSubstr("clears the ground by 328 ft, the minimum is 1000 ft"));
  EXPECT_THAT(findings[0].text, HasSubstr("stands at 6562 ft"));
  EXPECT_THAT(findings[0].cure, HasSubstr("7600 ft"));
  EXPECT_LT(geodesic(findings[0].where.value(), kMiddle).length.metres(), 1);
}

TEST(TerrainFindings, a_height_under_the_ground_is_said_to_be) {
  const std::vector<Finding> findings = found(
      cone_model(), over_the_cone(Length::nautical_miles(8)), at_altitude(Length::metres(1900)));
  ASSERT_FALSE(findings.empty());
  EXPECT_THAT(findings[0].text, HasSubstr("is 328 ft below the ground"));
}

TEST(TerrainFindings, clear_ground_gives_none) {
  EXPECT_THAT(found(cone_model(), over_the_cone(Length::nautical_miles(8)),
                    at_altitude(Length::metres(2400))),
              IsEmpty());
}

TEST(TerrainFindings, ground_that_is_not_known_is_not_checked) {
  terrain::ElevationTile tile =
      test::ground_round(kMiddle, 1.0 / 600, test::Cone{kMiddle, 2000, 0.1});
  tile.heights_m[tile.index(tile.rows / 2, tile.columns / 2)] = kGap;
  const std::vector<Finding> findings =
      found(terrain::ElevationModel({tile}), over_the_cone(Length::nautical_miles(8)),
            at_altitude(Length::metres(4000)));
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::not_checked);
  EXPECT_TRUE(findings[0].where);
}

TEST(TerrainFindings, without_any_tile_nothing_is_checked) {
  const std::vector<Finding> findings =
      found(terrain::ElevationModel(), over_the_cone(Length::nautical_miles(8)), {});
  ASSERT_FALSE(findings.empty());
  EXPECT_EQ(findings[0].severity, Severity::not_checked);
}

// The leg ends 1 NM before the summit; 90 kt are 1.5 NM in a minute. Within half a mile of the leg
// the ground stands at 2000 - 926 / 10 m at most: 1907 m are 6258 ft, so 7300 ft are planned.
TEST(TerrainFindings, ground_that_rises_beyond_a_legs_end_is_a_caution) {
  TerrainTask task;
  task.search_height = Length::feet(1000);
  const std::vector<Finding> findings =
      found(cone_model(), over_the_cone(Length::nautical_miles(3)), task);
  ASSERT_FALSE(findings.empty());
  EXPECT_EQ(findings[0].severity, Severity::caution);
  EXPECT_THAT(findings[0].text, HasSubstr("up to 6562 ft"));
}

TEST(TerrainFindings, a_search_height_under_the_minimum_is_said) {
  TerrainTask task;
  task.search_height = Length::feet(500);
  const std::vector<Finding> findings =
      found(cone_model(), over_the_cone(Length::nautical_miles(8)), task);
  EXPECT_THAT(findings, testing::Contains(testing::Field(
                            &Finding::text, HasSubstr("search height of 500 ft is under"))));
  // Over most of the leg a cone lies far below the height that clears its summit.
  EXPECT_THAT(findings, testing::Contains(testing::Field(&Finding::severity, Severity::note)));
}

// Heights in feet that nobody converted. (The reader's test does it with real ground.)
TEST(ModelFindings, heights_in_feet_taken_for_metres_are_doubted) {
  const test::Cone cone{kMiddle, 4321, 0.4};
  const terrain::ElevationTile fine = test::ground_round(
      kMiddle, 1.0 / 1200, [&](Position place) { return std::max(cone(place), 1500.0); }, 0.1);
  EXPECT_THAT(model_findings(terrain::ElevationModel({fine})), IsEmpty());
  terrain::ElevationTile feet = fine;
  for (float& height : feet.heights_m) height /= 0.3048F;
  const std::vector<Finding> findings = model_findings(terrain::ElevationModel({feet}));
  ASSERT_FALSE(findings.empty());
  EXPECT_EQ(findings[0].severity, Severity::caution);
  EXPECT_TRUE(findings[0].crew.empty());
}

}  // namespace
}  // namespace sweepwright::hazard
