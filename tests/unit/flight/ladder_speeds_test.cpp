// A coordinated creeping line as flown in wind keeps pace with its vessel.
#include "sweepwright/flight/ladder_speeds.hpp"

#include <gtest/gtest.h>

#include "support/ground.hpp"
#include "sweepwright/flight/flown_pattern.hpp"

namespace sweepwright::flight {
namespace {

using test::at;

// Track 000 at 100 kt in a wind from the north at 20 kt: 80 kt out, 120 kt back, and across, by the
// right triangle, sqrt(100^2 - 20^2) = 97.98 kt.
TEST(LadderSpeeds, FollowTheWindTriangle) {
  const pattern::LadderSpeeds speeds =
      ladder_speeds(TrueDirection(), pattern::Turn::right, Speed::knots(100),
                    {TrueDirection(), Speed::knots(20)});
  EXPECT_NEAR(speeds.out.knots(), 80, 1e-9);
  EXPECT_NEAR(speeds.back.knots(), 120, 1e-9);
  EXPECT_NEAR(speeds.creep.knots(), std::sqrt(9600.0), 1e-9);
}

// The vessel keeps its speed; the aircraft flies the pattern with its wind and turns. Where the
// aircraft is half way along a leg, the vessel is within what the turns so far cost: nothing of the
// pace is left over, as there was when airspeed was taken for ground speed.
TEST(LadderSpeeds, KeepPaceWithTheVesselAsFlown) {
  const Wind wind{TrueDirection::degrees(20), Speed::knots(25)};
  const Aircraft aircraft{Speed::knots(120), {}, Bank{Angle::degrees(45)}, {}};
  pattern::CoordinatedCreepingLine request;
  request.start = at(38, -117);
  request.spacing = Length::nautical_miles(4);
  request.legs = 7;
  request.aircraft = ladder_speeds({}, request.first_turn, aircraft.true_airspeed, wind);
  request.pace =
      pattern::pace_of_leg_length(Length::nautical_miles(20), request.spacing, request.aircraft);
  const pattern::Pattern pattern = pattern::make_coordinated_creeping_line(request);
  const pattern::VesselLine vessel = pattern::vessel_line(request);
  const TrueDirection course = geodesic(vessel.at_commencement, vessel.at_last_leg).start_track;
  FlyOptions options;
  options.magnetic_headings = false;
  const FlownPattern flown = fly(pattern, aircraft, WindField::uniform(wind), options);
  int passed = 0;
  for (const FlownLeg& leg : flown.legs) {
    if (leg.leg.kind != pattern::LegKind::search) continue;
    const Length half = leg.leg.line.length / 2;
    const Position middle = travel(leg.leg.from, leg.leg.line.start_track, half).position;
    const Duration time = leg.start + half / leg.triangle.ground_speed;
    const Position met =
        travel(vessel.at_commencement, course, request.pace.vessel_speed * time).position;
    // Turns of 45 degrees of bank: what they cost stays under a tenth of a spacing a leg.
    EXPECT_LT(geodesic(middle, met).length / request.spacing, 0.02 + 0.1 * passed) << passed;
    ++passed;
  }
  EXPECT_EQ(passed, 7);
}

}  // namespace
}  // namespace sweepwright::flight
