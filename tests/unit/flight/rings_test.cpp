#include "sweepwright/flight/rings.hpp"

#include <gtest/gtest.h>

#include <GeographicLib/Geodesic.hpp>
#include <cmath>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/flight/wind_triangle.hpp"

namespace sweepwright::flight {
namespace {

using test::at;

TEST(Rings, AllPlacesAreAtTheDistance) {
  for (const Position& place : test::awkward_places()) {
    const RangeRing ring = distance_ring(place, Length::nautical_miles(25));
    EXPECT_EQ(ring.line.front(), ring.line.back());
    for (const Position& there : ring.line) {
      // Again, with the library's own call.
      double metres = 0;
      GeographicLib::Geodesic::WGS84().Inverse(
          place.latitude().degrees(), place.longitude().degrees(), there.latitude().degrees(),
          there.longitude().degrees(), metres);
      EXPECT_NEAR(metres, 25 * 1852.0, 1e-6);
    }
    const GeodesicLine chord = geodesic(ring.line[0], ring.line[1]);
    const Position middle = travel(ring.line[0], chord.start_track, chord.length / 2).position;
    EXPECT_NEAR(geodesic(place, middle).length / ring.radius, 1, 1.6e-4);
  }
}

// 20 minutes at 90 kt are 30 NM; 30 kt of wind from the west carry the circle 10 NM east.
TEST(Rings, WindCarriesTheRingOfATime) {
  const Position place = at(38, -117);
  const Wind wind{TrueDirection::degrees(270), Speed::knots(30)};
  const RangeRing ring = time_ring(place, Duration(20 * 60), Speed::knots(90), wind);
  EXPECT_NEAR(ring.radius.nautical_miles(), 30, 1e-9);
  const GeodesicLine carried = geodesic(place, ring.centre);
  EXPECT_NEAR(carried.length.nautical_miles(), 10, 1e-9);
  EXPECT_NEAR(carried.start_track.degrees(), 90, 1e-9);
  // Downwind 40 NM, upwind 20 NM: what a hand computer gives at 120 and 60 kt.
  double farthest = 0;
  double nearest = 1e9;
  for (const Position& there : ring.line) {
    farthest = std::max(farthest, geodesic(place, there).length.nautical_miles());
    nearest = std::min(nearest, geodesic(place, there).length.nautical_miles());
  }
  EXPECT_NEAR(farthest, 40, 0.01);
  EXPECT_NEAR(nearest, 20, 0.01);
}

TEST(Rings, AgreeWithFlyingEachHeadingInSmallSteps) {
  const Position place = at(60, 10);
  const Wind wind{TrueDirection::degrees(300), Speed::knots(30)};
  const Speed airspeed = Speed::knots(120);
  const RangeRing ring = time_ring(place, Duration(3600), airspeed, wind);
  for (int heading = 0; heading < 360; heading += 30) {
    Position here = place;
    for (int minute = 0; minute < 60; ++minute) {
      const WindTriangle motion =
          triangle_for_heading(TrueDirection::degrees(heading), airspeed, wind);
      here = travel(here, motion.track, motion.ground_speed * Duration(60)).position;
    }
    // Holding a heading by compass is not a shortest line, so it falls short of the ring a little.
    const double share = geodesic(ring.centre, here).length / ring.radius;
    EXPECT_NEAR(share, 1, 0.01) << heading;
  }
}

TEST(Rings, RefuseWhatCannotBeDrawn) {
  EXPECT_THROW(distance_ring(at(0, 0), Length()), Error);
  EXPECT_THROW(distance_ring(at(0, 0), Length::nautical_miles(-1)), Error);
  EXPECT_THROW(distance_ring(at(0, 0), Length::nautical_miles(9000)), Error);
  EXPECT_THROW(time_ring(at(0, 0), Duration(), Speed::knots(90)), Error);
  EXPECT_THROW(time_ring(at(0, 0), Duration(60), Speed()), Error);
}

}  // namespace
}  // namespace sweepwright::flight
