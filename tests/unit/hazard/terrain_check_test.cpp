// Promises of terrain_check.hpp and minima.hpp. What is right: planted spikes, a cone's height, and
// the posts of the model themselves.
#include "sweepwright/hazard/terrain_check.hpp"

#include <gtest/gtest.h>

#include <random>

#include "support/flights.hpp"
#include "sweepwright/flight/flown_path.hpp"
#include "sweepwright/hazard/minima.hpp"

namespace sweepwright::hazard {
namespace {

using test::at;
using test::kGap;
using Random = std::mt19937_64;

constexpr float kSpike = 5000;
const Position kMiddle = at(38.25, -117.0);

terrain::ElevationModel model_of(terrain::ElevationTile tile) {
  return terrain::ElevationModel({std::move(tile)});
}

TerrainTask task_at(Length altitude) {
  TerrainTask task;
  task.altitude = altitude;
  task.aircraft = test::aircraft(Speed::knots(90));
  return task;
}

TerrainTask planned_by(HeightsBy heights) {
  TerrainTask task;
  task.heights = heights;
  task.search_height = Length::feet(1500);
  task.shortest_step = Length::nautical_miles(0.5);
  task.aircraft = test::aircraft(Speed::knots(90));
  return task;
}

/// A place of a leg's way, by time, straight part or turn.
Position place_on(const flight::FlownLegPath& path, Random& random) {
  const auto& part = path.turn.size() > 1 && random() % 2 == 0 ? path.turn : path.straight;
  const std::size_t piece = random() % (part.size() - 1);
  const GeodesicLine line = geodesic(part[piece].position, part[piece + 1].position);
  const double share = std::uniform_real_distribution<double>(0, 1)(random);
  return travel(part[piece].position, line.start_track, line.length * share).position;
}

/// The post nearest to a place bounds the cell that the place lies in.
std::size_t nearest_post(const terrain::ElevationTile& tile, Position place) {
  const auto& lattice = std::get<terrain::GeographicLattice>(tile.lattice);
  const double east = (place.longitude() - lattice.west).degrees();
  const double turns = std::floor(east / 360);
  const int column =
      static_cast<int>(std::lround((east - 360 * turns) / lattice.longitude_step.degrees()));
  const int row =
      static_cast<int>(std::lround((lattice.north - place.latitude()) / lattice.latitude_step));
  return tile.index(row, column);
}

TEST(TerrainCheck, finds_a_spike_planted_anywhere_in_the_corridor_of_the_flown_path) {
  Random random(8);
  const Length half_width = Length::nautical_miles(0.5);
  int turns = 0;
  for (const Position middle : {kMiddle, at(-17.1, 179.98), at(0.01, 0.02), at(78.4, 15.9)}) {
    const flight::FlownPattern flown = test::ladder_flight(middle, TrueDirection::degrees(33));
    const std::vector<flight::FlownLegPath> paths = flight::flown_paths(flown);
    const terrain::ElevationTile flat =
        test::ground_round(middle, 1.0 / 300, [](Position) { return 100; });
    for (int i = 0; i < 40; ++i) {
      const std::size_t leg = random() % paths.size();
      turns += paths[leg].turn.empty() ? 0 : 1;
      const double share = std::uniform_real_distribution<double>(0, 0.999)(random);
      const TrueDirection aside =
          TrueDirection::degrees(std::uniform_real_distribution<double>(0, 360)(random));
      const Position place =
          travel(place_on(paths[leg], random), aside, half_width * share).position;
      terrain::ElevationTile tile = flat;
      tile.heights_m.at(nearest_post(tile, place)) = kSpike;
      const TerrainCheck check =
          check_terrain(model_of(std::move(tile)), flown, task_at(Length::metres(2000)));
      const LegTerrain& found = check.legs.at(leg);
      ASSERT_TRUE(found.clearance.least);
      EXPECT_DOUBLE_EQ(found.clearance.least->clearance.metres(), 2000 - kSpike)
          << "leg " << leg << " near " << middle.latitude().degrees();
      EXPECT_TRUE(terrain::has(found.clearance, terrain::ClearanceClass::below_minimum));
    }
  }
  EXPECT_GT(turns, 40);
}

// Ground: z = 2000 m at the summit, 0.1 m lower for each metre from it. On a post, so that the
// model's highest is the cone's.
TEST(TerrainCheck, safe_altitude_over_a_cone_is_that_of_its_height) {
  const auto tile = test::ground_round(kMiddle, 1.0 / 600, test::Cone{kMiddle, 2000, 0.1});
  const flight::FlownPattern flown = test::one_leg(
      travel(kMiddle, TrueDirection::degrees(270), Length::nautical_miles(5)).position,
      Length::nautical_miles(10));
  const TerrainCheck check = check_terrain(model_of(tile), flown, planned_by(HeightsBy::leg));
  ASSERT_EQ(check.legs.size(), 1u);
  // 2000 m are 6561.7 ft: 7600 ft clear them by 1,000 ft, 8100 ft by 1,500 ft.
  EXPECT_NEAR(check.legs[0].safe.value().feet(), 7600, 1e-6);
  EXPECT_NEAR(check.safe.value().feet(), 7600, 1e-6);
  EXPECT_NEAR(highest_planned(check.legs[0]).value().feet(), 8100, 1e-6);
}

TEST(TerrainCheck, planned_heights_keep_the_minimum_in_every_way_of_planning) {
  const auto tile = test::ground_round(kMiddle, 1.0 / 300, test::rolling_ground);
  const flight::FlownPattern flown = test::ladder_flight(kMiddle, TrueDirection::degrees(20));
  for (const HeightsBy heights : {HeightsBy::pattern, HeightsBy::leg, HeightsBy::steps}) {
    const TerrainCheck check = check_terrain(model_of(tile), flown, planned_by(heights));
    for (std::size_t i = 0; i < check.legs.size(); ++i) {
      const Length least = check.legs[i].clearance.least.value().clearance;
      EXPECT_GE(least, flown.legs[i].searching ? Length::feet(1500) : terrain::kMinimumClearance);
      EXPECT_LE(check.legs[i].safe.value(), check.safe.value() + Length::feet(2000));
    }
  }
}

TEST(TerrainCheck, one_height_for_the_pattern_is_that_of_its_highest_leg) {
  const auto tile = test::ground_round(kMiddle, 1.0 / 300, test::rolling_ground);
  const flight::FlownPattern flown = test::ladder_flight(kMiddle, TrueDirection::degrees(20));
  const TerrainCheck check = check_terrain(model_of(tile), flown, planned_by(HeightsBy::pattern));
  std::optional<Length> highest;
  for (std::size_t i = 0; i < check.legs.size(); ++i) {
    if (!flown.legs[i].searching) continue;
    EXPECT_EQ(highest_planned(check.legs[i]), highest_planned(check.legs[1]));
    highest = std::max(highest.value_or(Length()), check.legs[i].safe.value());
  }
  EXPECT_EQ(check.safe, highest);
}

// In calm air the climb over a way d at rate r and airspeed v gains d r / v.
TEST(TerrainCheck, climbs_between_planned_heights_can_be_made) {
  const auto tile = test::ground_round(
      kMiddle, 1.0 / 300, [](Position place) { return 3 * test::rolling_ground(place); });
  const pattern::Pattern pattern =
      pattern::make_parallel_track({kMiddle, TrueDirection::degrees(20), Length::nautical_miles(5),
                                    Length::nautical_miles(1), 6, pattern::Turn::right});
  const flight::FlownPattern flown =
      flight::fly(pattern, test::aircraft(Speed::knots(90)), {}, test::options_from({}));
  TerrainTask task = planned_by(HeightsBy::steps);
  const Speed rate = Speed::metres_per_second(2);
  const Speed airspeed = Speed::metres_per_second(40);
  const auto worst_gap = [&](const TerrainCheck& check) {
    Length worst;
    std::optional<Length> before;
    Length way;
    for (const LegTerrain& leg : check.legs) {
      Length from;
      for (const terrain::HeightStep& step : leg.heights) {
        if (before) {
          worst = std::max(worst, step.altitude.value() - *before - way * (rate / airspeed));
        }
        before = step.altitude;
        way = step.to - from;
        from = step.to;
      }
    }
    return worst;
  };
  EXPECT_GT(worst_gap(check_terrain(model_of(tile), flown, task)), Length::feet(100));
  task.climb = ClimbPerformance{rate, airspeed};
  EXPECT_LE(worst_gap(check_terrain(model_of(tile), flown, task)), Length::metres(0.01));
}

TEST(TerrainCheck, gives_no_height_over_ground_that_is_not_known) {
  terrain::ElevationTile tile = test::ground_round(kMiddle, 1.0 / 300, test::rolling_ground);
  tile.heights_m.at(nearest_post(tile, kMiddle)) = kGap;
  const flight::FlownPattern flown = test::one_leg(
      travel(kMiddle, TrueDirection::degrees(270), Length::nautical_miles(5)).position,
      Length::nautical_miles(10));
  for (const HeightsBy heights : {HeightsBy::pattern, HeightsBy::leg}) {
    const TerrainCheck check = check_terrain(model_of(tile), flown, planned_by(heights));
    EXPECT_EQ(check.legs[0].safe, std::nullopt);
    EXPECT_EQ(highest_planned(check.legs[0]), std::nullopt);
    EXPECT_EQ(check.safe, std::nullopt);
    EXPECT_FALSE(terrain::has(check.legs[0].clearance, terrain::ClearanceClass::clear));
  }
}

TEST(TerrainCheck, bears_a_base_at_the_commence_search_point) {
  const pattern::Pattern pattern =
      pattern::make_parallel_track({kMiddle, TrueDirection::degrees(0), Length::nautical_miles(3),
                                    Length::nautical_miles(1), 2, pattern::Turn::right});
  const flight::FlyOptions options = test::options_from(pattern::commence_search_point(pattern));
  const flight::FlownPattern flown =
      flight::fly(pattern, test::aircraft(Speed::knots(90)), {}, options);
  const auto tile = test::ground_round(kMiddle, 1.0 / 300, test::rolling_ground);
  const TerrainCheck check = check_terrain(model_of(tile), flown, planned_by(HeightsBy::leg));
  EXPECT_EQ(check.legs.size(), flown.legs.size());
}

TEST(Minima, half_width_is_half_the_spacing_or_half_a_mile_or_the_planners) {
  EXPECT_EQ(corridor_half_width({}, Length::nautical_miles(3)), Length::nautical_miles(1.5));
  EXPECT_EQ(corridor_half_width({}, Length::nautical_miles(0.4)), Length::nautical_miles(0.5));
  Minima minima;
  minima.corridor = Length::nautical_miles(0.1);
  EXPECT_EQ(corridor_half_width(minima, Length::nautical_miles(3)), Length::nautical_miles(0.1));
}

}  // namespace
}  // namespace sweepwright::hazard
