#include "sweepwright/hazard/crew_track.hpp"

#include <gtest/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::hazard {
namespace {

using test::at;

const TimePoint kNoon =
    TimePoint(std::chrono::sys_days(std::chrono::year(2026) / 7 / 14)) + std::chrono::hours(12);

flight::FlownPattern flown_at(Position place) {
  const pattern::Pattern pattern =
      pattern::make_parallel_track({place, TrueDirection::degrees(33), Length::nautical_miles(12),
                                    Length::nautical_miles(1), 6, pattern::Turn::right});
  flight::FlyOptions options;
  options.depart = kNoon;
  options.base = travel(place, TrueDirection::degrees(200), Length::nautical_miles(20)).position;
  return flight::fly(
      pattern, {.true_airspeed = Speed::knots(90), .transit_airspeed = {}, .fuel_flow = {}},
      flight::WindField::uniform({TrueDirection::degrees(310), Speed::knots(25)}), options);
}

TEST(CrewTrack, begins_and_ends_with_the_flight_and_never_goes_back_in_time) {
  for (const Position place : test::awkward_places()) {
    const flight::FlownPattern flown = flown_at(place);
    const CrewTrack track = crew_track("ALFA", "A1", flown, Length::feet(9000));
    ASSERT_GT(track.points.size(), flown.legs.size());
    EXPECT_EQ(track.points.front().time, kNoon);
    EXPECT_NEAR(Duration(track.points.back().time - kNoon).count(), flown.total_time.count(),
                0.001);
    for (std::size_t i = 1; i < track.points.size(); ++i) {
      EXPECT_LT(track.points[i - 1].time, track.points[i].time);
      EXPECT_LE(track.points[i - 1].leg, track.points[i].leg);
    }
  }
}

TEST(CrewTrack, moves_no_faster_than_the_aircraft_can) {
  const CrewTrack track = crew_track("ALFA", "A1", flown_at(at(38.25, -117.0)), {});
  for (std::size_t i = 1; i < track.points.size(); ++i) {
    const Length way = geodesic(track.points[i - 1].position, track.points[i].position).length;
    const Duration time = track.points[i].time - track.points[i - 1].time;
    // 90 kt and 25 kt of wind; 3 m for where a turn meets the next leg, 1 ms of rounding.
    EXPECT_LE(way.metres(), 115 * 0.5144444 * (time.count() + 0.001) + 3);
    EXPECT_EQ(track.points[i].altitude, std::nullopt);
  }
}

}  // namespace
}  // namespace sweepwright::hazard
