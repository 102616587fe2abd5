// What holds for every pattern wherever it is drawn: its legs are shortest lines that follow on
// each other, and its shape is the same on the equator, far north and across the antimeridian.
#include <gtest/gtest.h>

#include <GeographicLib/Geodesic.hpp>
#include <functional>
#include <map>
#include <set>
#include <string>

#include "support/ground.hpp"
#include "sweepwright/pattern/coordinated_creeping_line.hpp"
#include "sweepwright/pattern/creeping_line.hpp"
#include "sweepwright/pattern/expanding_square.hpp"
#include "sweepwright/pattern/multi_unit_parallel.hpp"
#include "sweepwright/pattern/parallel_track.hpp"
#include "sweepwright/pattern/sector_search.hpp"
#include "sweepwright/pattern/track_line.hpp"
#include "sweepwright/pattern/waypoints.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;
using MakePattern = std::function<Pattern(Position)>;

/// A route with bends to both sides.
Path bent_route(Position place) {
  Path route{place};
  TrueDirection track = TrueDirection::degrees(100);
  for (const double turn : {40.0, -95.0, 20.0, 0.0}) {
    const Arrival end = travel(route.back(), track, Length::nautical_miles(12));
    route.push_back(end.position);
    track = end.track + Angle::degrees(turn);
  }
  return route;
}

/// One pattern of each kind, of a size that crews fly, round or from a place.
std::map<std::string, MakePattern> patterns() {
  const TrueDirection track = TrueDirection::degrees(33);
  const Length mile = Length::nautical_miles(1);
  return {
      {"parallel",
       [=](Position place) {
         return make_parallel_track({place, track, mile * 30, mile * 2, 10, Turn::right});
       }},
      {"parallel over an area",
       [=](Position place) {
         return make_parallel_track(test::rectangle(place, track, mile * 30, mile * 17),
                                    {.spacing = mile * 2, .first_track = track});
       }},
      {"creeping",
       [=](Position place) {
         return make_creeping_line({place, track, mile * 8, mile * 2, 20, Turn::left});
       }},
      {"square",
       [=](Position place) {
         return make_expanding_square({place, track, mile, 20, Turn::right});
       }},
      {"sector",
       [=](Position place) {
         return make_sector_search({.datum = place,
                                    .first_track = track,
                                    .radius = mile * 20,
                                    .passes = SectorPasses::both});
       }},
      {"track line",
       [=](Position place) {
         return make_track_line({bent_route(place), mile, 4, Turn::right});
       }},
      {"coordinated",
       [=](Position place) {
         const LadderSpeeds ground_speed = still_air(Speed::knots(120));
         return make_coordinated_creeping_line(
             {place, track, mile * 2, 10, ground_speed,
              pace_of_leg_length(mile * 18, mile * 2, ground_speed), Turn::left});
       }},
      {"multi-unit",
       [=](Position place) {
         return make_multi_unit_parallel({place, track, mile * 30, mile * 2, 10, Turn::right},
                                         {2, 2, Formation::abreast});
       }},
      {"waypoints", [=](Position place) { return make_waypoint_pattern({bent_route(place)}); }},
  };
}

// The contour search is bound to its ground: contour_search_test.cpp moves it with the ground.
TEST(EveryPattern, HasAShapeHere) {
  std::set<Kind> shown{Kind::contour};
  for (const auto& [name, make] : patterns()) shown.insert(make(at(0, 0)).kind);
  EXPECT_EQ(shown.size(), kinds().size());
}

// The lengths and tracks of all legs again, and their ends, with plain calls of the library.
TEST(EveryPattern, HasLegsThatAreShortestLinesAndFollowOnEachOther) {
  const auto& earth = GeographicLib::Geodesic::WGS84();
  for (const auto& [name, make] : patterns()) {
    for (const Position& place : test::awkward_places()) {
      const Pattern pattern = make(place);
      for (std::size_t i = 0; i < pattern.legs.size(); ++i) {
        const Leg& leg = pattern.legs[i];
        const double from_latitude = leg.from.latitude().degrees();
        const double from_longitude = leg.from.longitude().degrees();
        double metres = 0;
        double start = 0;
        double end = 0;
        earth.Inverse(from_latitude, from_longitude, leg.to.latitude().degrees(),
                      leg.to.longitude().degrees(), metres, start, end);
        EXPECT_NEAR(leg.line.length.metres(), metres, 1e-6) << name;
        double latitude = 0;
        double longitude = 0;
        earth.Direct(from_latitude, from_longitude, leg.line.start_track.degrees(), metres,
                     latitude, longitude);
        EXPECT_LT(geodesic(at(latitude, longitude), leg.to).length.metres(), 1e-3) << name;
        if (i > 0) {
          EXPECT_EQ(pattern.legs[i - 1].to, leg.from) << name << " leg " << i + 1;
        }
      }
    }
  }
}

// All distances between ends of legs, against the same pattern on the equator.
TEST(EveryPattern, HasTheSameShapeToATenthOfAPercentAnywhere) {
  for (const auto& [name, make] : patterns()) {
    const Path on_equator = path(make(at(0, 0)));
    for (const Position& place : {at(75, 20), at(-75, -179.99), at(10, 180), at(89.95, 0)}) {
      const Path there = path(make(place));
      ASSERT_EQ(there.size(), on_equator.size()) << name;
      const Length size = length(on_equator);
      for (std::size_t i = 0; i < there.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
          const Length expected = geodesic(on_equator[i], on_equator[j]).length;
          const Length found = geodesic(there[i], there[j]).length;
          // Ends that nearly meet are compared with the pattern's size.
          EXPECT_NEAR(found / size, expected / size, 0.001 * expected / size + 1e-6)
              << name << " " << i << " " << j;
        }
      }
    }
  }
}

}  // namespace
}  // namespace sweepwright::pattern
