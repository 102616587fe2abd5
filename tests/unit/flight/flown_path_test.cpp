#include "sweepwright/flight/flown_path.hpp"

#include <gtest/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/pattern/expanding_square.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::flight {
namespace {

using pattern::Turn;
using test::at;

const TimePoint kNoon =
    TimePoint(std::chrono::sys_days(std::chrono::year(2026) / 7 / 14)) + std::chrono::hours(12);

Aircraft ninety_knots() {
  return {.true_airspeed = Speed::knots(90), .transit_airspeed = {}, .fuel_flow = {}};
}

WindField blowing() {
  return WindField::uniform({TrueDirection::degrees(310), Speed::knots(25)});
}

std::vector<pattern::Pattern> patterns_at(Position place) {
  std::vector<pattern::Pattern> all;
  for (const double spacing : {0.4, 1.2, 3.0}) {
    all.push_back(
        pattern::make_parallel_track({place, TrueDirection::degrees(33), Length::nautical_miles(12),
                                      Length::nautical_miles(spacing), 6, Turn::left}));
    all.push_back(pattern::make_expanding_square(
        {place, TrueDirection::degrees(130), Length::nautical_miles(spacing), 7, Turn::right}));
  }
  return all;
}

TEST(FlownPath, P1_HangsTogether) {
  for (const Position& place : test::awkward_places()) {
    for (const pattern::Pattern& pattern : patterns_at(place)) {
      const std::vector<FlownLegPath> paths =
          flown_paths(fly(pattern, ninety_knots(), blowing(), {.depart = kNoon}));
      for (std::size_t i = 0; i + 1 < paths.size(); ++i) {
        const std::vector<PathPoint>& last =
            paths[i].turn.empty() ? paths[i].straight : paths[i].turn;
        const PathPoint& next = paths[i + 1].straight.front();
        EXPECT_LT(geodesic(last.back().position, next.position).length.metres(), 3)
            << place.latitude().degrees() << " spacing " << pattern.spacing.nautical_miles();
        EXPECT_NEAR(last.back().time.count(), next.time.count(), 1e-6);
      }
    }
  }
}

TEST(FlownPath, TimesFitTheWayFlownThroughTheAir) {
  // Between two points of the path, way less wind times time is flown at the true airspeed.
  const FlownPattern flown =
      fly(patterns_at(at(10, 10)).at(2), ninety_knots(), blowing(), {.depart = kNoon});
  const Velocity wind = blowing().at({}, kNoon);
  for (const FlownLegPath& path : flown_paths(flown)) {
    for (const auto* points : {&path.straight, &path.turn}) {
      for (std::size_t i = 1; i < points->size(); ++i) {
        const PathPoint& a = (*points)[i - 1];
        const PathPoint& b = (*points)[i];
        const GeodesicLine line = geodesic(a.position, b.position);
        const Offset air = make_offset(line.start_track, line.length) - wind * (b.time - a.time);
        const double airspeed = length(air).metres() / (b.time - a.time).count();
        // A chord of 10 degrees is 0.13 % shorter than its arc.
        EXPECT_NEAR(airspeed / Speed::knots(90).metres_per_second(), 1, 0.002);
      }
    }
  }
}

// The pattern is flown exactly relative to the object: the object's own way taken off, the straight
// parts lie on the pattern's legs.
TEST(FlownPath, P2_RelativeToADriftingObjectThePatternIsExact) {
  const Drift drift{TrueDirection::degrees(75), Speed::knots(2)};
  for (const Position& place : {at(38, -117), at(-17.5, 179.9), at(70, 16)}) {
    for (const double wind_knots : {0.0, 25.0}) {
      const pattern::Pattern square = pattern::make_expanding_square(
          {place, TrueDirection::degrees(30), Length::nautical_miles(1.5), 9, Turn::right});
      const FlownPattern flown =
          fly(square, ninety_knots(),
              WindField::uniform({TrueDirection::degrees(310), Speed::knots(wind_knots)}),
              {.depart = kNoon, .drift = drift});
      const std::vector<FlownLegPath> paths = flown_paths(flown);
      ASSERT_EQ(paths.size(), flown.legs.size());
      int legs = 0;
      for (std::size_t i = 0; i < paths.size(); ++i) {
        if (flown.legs[i].joined) continue;
        const pattern::Leg& drawn = square.legs.at(static_cast<std::size_t>(legs++));
        const Length left_out = flown.legs[i].lead_in + flown.legs[i].lead_out;
        for (const PathPoint& point : paths[i].straight) {
          // The crew's place seen from the object: what the object drifted is taken off again.
          const Length drifted = drift.speed * point.time;
          const Position back =
              travel(point.position, travel(place, drift.towards, drifted).track.reversed(),
                     drifted)
                  .position;
          const Length out = geodesic(drawn.from, back).length + geodesic(back, drawn.to).length -
                             drawn.line.length;
          EXPECT_LT(out.metres(), 0.5);
        }
        EXPECT_LT(left_out, drawn.line.length);
      }
      EXPECT_EQ(legs, 9);
    }
  }
}

// Over the ground, the same pattern is not: it drifts by speed times time.
TEST(FlownPath, OverGroundThePatternDrifts) {
  const Drift drift{TrueDirection::degrees(90), Speed::knots(3)};
  const pattern::Pattern square = pattern::make_expanding_square(
      {at(0, 0), TrueDirection(), Length::nautical_miles(2), 6, Turn::right});
  const FlownPattern flown = fly(square, ninety_knots(), {}, {.depart = kNoon, .drift = drift});
  const PathPoint end = flown_paths(flown).back().straight.back();
  const Length moved = geodesic(square.legs.back().to, end.position).length;
  EXPECT_NEAR(moved.metres(), (drift.speed * flown.total_time).metres(), 0.01);
  // Flying north in calm air while keeping up with an object that moves east at 3 kt.
  EXPECT_NEAR(flown.legs[0].triangle.track.degrees(), 1.91, 0.01);  // atan(3 / 90)
}

TEST(FlownPath, WholePathIsInOneRow) {
  const FlownPattern flown =
      fly(patterns_at(at(38, -117)).at(4), ninety_knots(), blowing(), {.depart = kNoon});
  const Path path = whole_path(flown);
  EXPECT_NEAR(length(path) / flown.total_distance, 1, 0.001);
}

}  // namespace
}  // namespace sweepwright::flight
