// Lines beside a route keep their distance, join at the bends and do not cross themselves.
#include "sweepwright/pattern/route.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "pattern_distance.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;

const Length kMile = Length::nautical_miles(1);

/// A route from a place: legs of these lengths, with these turns between them.
Path route_from(Position start, double track_deg, const std::vector<double>& legs_nm,
                const std::vector<double>& turns_deg) {
  Path route{start};
  TrueDirection track = TrueDirection::degrees(track_deg);
  for (std::size_t i = 0; i < legs_nm.size(); ++i) {
    const Arrival end = travel(route.back(), track, kMile * legs_nm[i]);
    route.push_back(end.position);
    track = end.track + Angle::degrees(i < turns_deg.size() ? turns_deg[i] : 0);
  }
  return route;
}

Path zigzag(Position start) {
  return route_from(start, 70, {12, 9, 14, 8}, {50, -80, 30});
}

/// True when the path does not meet itself.
bool is_simple(const Path& path) {
  return boost::geometry::is_simple(FlatGround(path.front()).flat(path));
}

void expect_distance(const Path& line, const Path& route, Length offset) {
  const FlatGround ground(route.front());
  const FlatGround::Line flat_route = ground.flat(route);
  const double wanted = std::abs(offset.metres());
  for (const Leg& leg : legs_of(line)) {
    for (const double share : {0.0, 0.3, 0.5, 0.7, 1.0}) {
      const Position place =
          travel(leg.from, leg.line.start_track, leg.line.length * share).position;
      EXPECT_GE(boost::geometry::distance(ground.flat(place), flat_route), wanted * 0.999);
    }
  }
}

TEST(LineBeside, AStraightRouteIsAsLongAsTheRoute) {
  for (const Position& place : test::awkward_places()) {
    const Path route = route_from(place, 33, {40}, {});
    for (const double offset : {-5.0, -0.5, 0.5, 5.0}) {
      const std::vector<Path> lines = line_beside(route, kMile * offset);
      ASSERT_EQ(lines.size(), 1u);
      ASSERT_EQ(lines[0].size(), 2u);
      EXPECT_NEAR(length(lines[0]).nautical_miles(), 40, 0.001);
      // On the right side of the route.
      const Angle side = turn_between(geodesic(route[0], route[1]).start_track,
                                      geodesic(route[0], lines[0][0]).start_track);
      EXPECT_NEAR(side.degrees(), offset > 0 ? 90 : -90, 1e-6);
    }
  }
}

// By hand: at a bend of angle b a mitred line is shorter or longer by 2 d tan(b/2).
TEST(LineBeside, ABendIsMitred) {
  for (const double bend : {20.0, 60.0, 90.0}) {
    const Path route = route_from(at(38, -117), 10, {20, 20}, {bend});
    const double change = 2 * 1.5 * std::tan(bend / 2 * std::acos(-1.0) / 180);
    const std::vector<Path> inside = line_beside(route, kMile * 1.5);
    const std::vector<Path> outside = line_beside(route, kMile * -1.5);
    ASSERT_EQ(inside.size(), 1u);
    ASSERT_EQ(outside.size(), 1u);
    EXPECT_EQ(inside[0].size(), 3u);
    EXPECT_EQ(outside[0].size(), 3u);
    EXPECT_NEAR(length(inside[0]).nautical_miles(), 40 - change, 0.001);
    EXPECT_NEAR(length(outside[0]).nautical_miles(), 40 + change, 0.001);
  }
}

TEST(LineBeside, ASharpBendGetsTwoCornersOutside) {
  const Path route = route_from(at(38, -117), 10, {20, 20}, {140});
  const std::vector<Path> outside = line_beside(route, kMile * -2);
  ASSERT_EQ(outside.size(), 1u);
  ASSERT_EQ(outside[0].size(), 4u);
  for (const std::size_t corner : {1u, 2u}) {
    EXPECT_LT(geodesic(route[1], outside[0][corner]).length.nautical_miles(), 2 * 1.42);
  }
  expect_distance(outside[0], route, kMile * 2);
}

TEST(LineBeside, KeepsItsDistanceAnywhere) {
  for (const Position& place : test::awkward_places()) {
    const Path route = zigzag(place);
    for (const double offset : {-3.0, -0.5, 0.5, 3.0}) {
      const std::vector<Path> lines = line_beside(route, kMile * offset);
      ASSERT_EQ(lines.size(), 1u);
      EXPECT_TRUE(is_simple(lines[0]));
      expect_distance(lines[0], route, kMile * offset);
    }
  }
}

TEST(LineBeside, LeavesOutLegsThatAreTooShortInsideABend) {
  // Inside two bends of 60 degrees, a leg of 2 NM is shorter than 2 x 3 tan(30): it has no line.
  const Path route = route_from(at(38, -117), 0, {20, 2, 20}, {60, 60});
  const std::vector<Path> inside = line_beside(route, kMile * 3);
  ASSERT_EQ(inside.size(), 1u);
  EXPECT_EQ(inside[0].size(), 3u);
  EXPECT_TRUE(is_simple(inside[0]));
  expect_distance(inside[0], route, kMile * 3);
}

TEST(LineBeside, BreaksWhereTheRouteComesBackNear) {
  // A bay that narrows to 2 NM between legs 1 and 5: 1.5 NM off there is no room on that side.
  const Path route = route_from(at(38, -117), 90, {20, 8, 12, 7, 8, 9}, {90, 90, 90, -90, -90});
  std::size_t pieces = 0;
  for (const double offset : {-1.5, 1.5}) {
    const std::vector<Path> lines = line_beside(checked_route(route), kMile * offset);
    for (const Path& line : lines) {
      EXPECT_TRUE(is_simple(line));
      expect_distance(line, route, kMile * offset);
    }
    pieces = std::max(pieces, lines.size());
  }
  EXPECT_GT(pieces, 1u);
}

TEST(LineBeside, HoldsForManyRoutes) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> leg(1, 15);
  std::uniform_real_distribution<double> turn(-100, 100);
  int checked = 0;
  for (int i = 0; i < 150; ++i) {
    std::vector<double> legs(6);
    std::vector<double> turns(5);
    for (double& l : legs) l = leg(random);
    for (double& t : turns) t = turn(random);
    const Path drawn = route_from(at(60, -180), 15, legs, turns);
    Path route;
    try {
      route = checked_route(drawn);
    } catch (const Error&) {
      continue;  // it crosses itself
    }
    ++checked;
    for (const double offset : {-2.0, 2.0}) {
      for (const Path& line : line_beside(route, kMile * offset)) {
        EXPECT_TRUE(is_simple(line)) << "route " << i << " offset " << offset;
        expect_distance(line, route, kMile * offset);
      }
    }
  }
  EXPECT_GT(checked, 75);
}

TEST(Route, IsRefusedWhenItCannotBeFollowed) {
  const auto refuse = [](const Path& route, const std::string& why) {
    try {
      checked_route(route);
      ADD_FAILURE() << "taken: " << why;
    } catch (const Error& error) {
      EXPECT_EQ(error.code(), ErrorCode::geometry);
      EXPECT_NE(error.message().find(why), std::string::npos) << error.message();
    }
  };
  refuse({}, "one place");
  refuse({at(1, 1), at(1, 1)}, "one place");
  refuse({at(0, 0), at(1, 0), at(0, 0)}, "turns back on itself at 01-00.00N 000-00.00E");
  refuse({at(0, 0), at(0, 2), at(1, 1), at(-1, 1)}, "crosses itself at 00-00.00N 001-00.00E");
  Path long_one;
  for (int i = 0; i <= 1000; ++i) long_one.push_back(at(0, 0.001 * i));
  refuse(long_one, "1001 places");
  refuse({at(0, 0), at(0, 30)}, "km from the middle");
}

TEST(Route, MayEndWhereItBegins) {
  const Path triangle{at(0, 0), at(0, 1), at(1, 0.5), at(0, 0)};
  EXPECT_EQ(checked_route(triangle), triangle);
  for (const double offset : {-2.0, 2.0}) {
    for (const Path& line : line_beside(triangle, kMile * offset)) {
      expect_distance(line, triangle, kMile * offset);
    }
  }
}

TEST(Route, DropsPlacesThatStandTwice) {
  EXPECT_EQ(checked_route({at(0, 0), at(0, 0), at(0, 1), at(0, 1)}), (Path{at(0, 0), at(0, 1)}));
}

}  // namespace
}  // namespace sweepwright::pattern
