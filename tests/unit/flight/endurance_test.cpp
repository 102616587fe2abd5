#include "sweepwright/flight/endurance.hpp"

#include <gtest/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/flight/flown_path.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::flight {
namespace {

using test::at;

const Aircraft kAircraft{
    .true_airspeed = Speed::knots(90), .transit_airspeed = {}, .fuel_flow = {}};

struct Flight {
  WindField wind = WindField::uniform({TrueDirection::degrees(250), Speed::knots(20)});
  FlyOptions options{.depart = TimePoint(), .base = at(37.5, -117), .magnetic_headings = false};
  FlownPattern flown = fly(pattern::make_parallel_track(
                               {at(38, -117), TrueDirection::degrees(0), Length::nautical_miles(12),
                                Length::nautical_miles(2), 6, pattern::Turn::right}),
                           kAircraft, wind, options);

  EnduranceUse with(Duration endurance, Duration reserve) const {
    return endurance_use(flown, kAircraft, wind, options, {endurance, reserve});
  }
};

constexpr Duration kReserve{30 * 60};

TEST(Endurance, P2_EnoughFuelLeavesTheWholePattern) {
  const Flight flight;
  const EnduranceUse use = flight.with(flight.flown.total_time + kReserve + Duration(60), kReserve);
  EXPECT_TRUE(use.is_enough());
  EXPECT_NEAR(use.spare.count(), 60, 1e-6);
  EXPECT_NEAR(use.needed.count(), (flight.flown.total_time + kReserve).count(), 1e-9);
  EXPECT_EQ(use.search_legs, 6);
  EXPECT_EQ(use.search_legs_flown, 6);
  EXPECT_FALSE(use.short_of);
  ASSERT_TRUE(use.bingo);
  EXPECT_NEAR(use.bingo->count(), flight.flown.search_end.count(), 1e-6);
}

TEST(Endurance, P1_LeavingAtBingoLeavesTheReserve) {
  const Flight flight;
  for (const double hours : {1.2, 1.4, 1.6, 1.8}) {
    const Duration endurance(hours * 3600);
    const EnduranceUse use = flight.with(endurance, kReserve);
    ASSERT_FALSE(use.is_enough()) << hours;
    ASSERT_TRUE(use.bingo) << hours;
    EXPECT_LT(use.search_legs_flown, 6);
    ASSERT_TRUE(use.short_of);
    // The place at bingo, from the path that is drawn, between its points.
    Position there;
    for (const FlownLegPath& path : flown_paths(flight.flown)) {
      const PathPoint& a = path.straight.front();
      const PathPoint& b = path.straight.back();
      if (*use.bingo < a.time || *use.bingo > b.time) continue;
      const GeodesicLine line = geodesic(a.position, b.position);
      there = travel(a.position, line.start_track,
                     line.length * ((*use.bingo - a.time) / (b.time - a.time)))
                  .position;
    }
    const Duration home =
        time_home(there, *flight.options.base, kAircraft, flight.wind, flight.options, *use.bingo);
    // When the last moment falls into a turn, the start of the turn is taken.
    const Duration left = endurance - kReserve - *use.bingo - home;
    EXPECT_GE(left.count(), -1) << hours;
    EXPECT_LE(left.count(), 60) << hours;
  }
}

TEST(Endurance, MoreFuelNeverMeansFewerLegs) {
  const Flight flight;
  int before = 0;
  for (int minutes = 30; minutes < 200; minutes += 5) {
    const EnduranceUse use = flight.with(Duration(minutes * 60), kReserve);
    EXPECT_GE(use.search_legs_flown, before);
    before = use.search_legs_flown;
  }
  EXPECT_EQ(before, 6);
}

TEST(Endurance, TooLittleToReachThePatternHasNoBingo) {
  const Flight flight;
  const EnduranceUse use = flight.with(Duration(40 * 60), kReserve);
  EXPECT_FALSE(use.bingo);
  EXPECT_EQ(use.search_legs_flown, 0);
  EXPECT_FALSE(use.is_enough());
}

TEST(Endurance, RefusesWhatMakesNoSense) {
  const Flight flight;
  EXPECT_THROW(flight.with(Duration(-1), kReserve), Error);
  EXPECT_THROW(flight.with(Duration(1), Duration(-1)), Error);
  FlyOptions nowhere = flight.options;
  nowhere.base.reset();
  EXPECT_THROW(
      endurance_use(flight.flown, kAircraft, flight.wind, nowhere, {Duration(3600), kReserve}),
      Error);
}

}  // namespace
}  // namespace sweepwright::flight
