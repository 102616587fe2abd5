#include "sweepwright/pattern/track_line.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "pattern_distance.hpp"
#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::pattern {
namespace {

using test::at;

const Length kMile = Length::nautical_miles(1);

Path straight_route(Position from) {
  return {from, travel(from, TrueDirection::degrees(70), kMile * 30).position};
}

Path bent_route(Position from, Angle bend) {
  const Arrival turn = travel(from, TrueDirection::degrees(70), kMile * 20);
  return {from, turn.position, travel(turn.position, turn.track + bend, kMile * 20).position};
}

class TrackLineCheck : public testing::TestWithParam<test::CheckRow> {};

TEST_P(TrackLineCheck, PassesLieWhereTheTextsSay) {
  const test::CheckRow& row = GetParam();
  for (const Position& place : test::awkward_places()) {
    for (const Turn turn : {Turn::right, Turn::left}) {
      const Path route = straight_route(place);
      const Pattern pattern =
          make_track_line({route, kMile * 2, static_cast<int>(row.number("passes")), turn});
      EXPECT_EQ(designator(pattern), row.text("designator"));
      const std::vector<Leg> legs = search_legs(pattern);
      ASSERT_EQ(legs.size(), static_cast<std::size_t>(row.number("passes")));
      const auto pass = static_cast<std::size_t>(row.number("pass"));
      const Leg& leg = legs[pass - 1];
      const Position beside = pass % 2 == 1 ? leg.from : leg.to;  // at the route's first end
      const GeodesicLine across = geodesic(route[0], beside);
      const double offset = row.number("offset_spacings") * (turn == Turn::right ? 1 : -1);
      EXPECT_NEAR(across.length.nautical_miles(), std::abs(offset) * 2, 1e-6);
      if (offset != 0) {
        EXPECT_NEAR(
            turn_between(geodesic(route[0], route[1]).start_track, across.start_track).degrees(),
            offset > 0 ? 90 : -90, 1e-4);
      }
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Published, TrackLineCheck,
                         testing::ValuesIn(test::check_rows("pattern/track_line.csv",
                                                            {"passes", "pass", "offset_spacings",
                                                             "designator"})),
                         test::RowName());

TEST(TrackLine, EndsWhereItsFormSays) {
  const Path route = bent_route(at(60, -180), Angle::degrees(-40));
  for (int passes = 1; passes <= 8; ++passes) {
    const Pattern pattern = make_track_line({route, kMile, passes, Turn::right});
    const double offset = passes % 2 == 0 ? passes / 2 - 0.5 : passes / 2;
    const Position end = passes % 2 == 0 ? route.front() : route.back();
    EXPECT_NEAR(geodesic(end, pattern.legs.back().to).length.nautical_miles(), offset, 1e-6);
  }
}

TEST(TrackLine, TurnsToOneSideAtTheEndsOfPasses) {
  for (const Turn turn : {Turn::right, Turn::left}) {
    const Pattern pattern = make_track_line({straight_route(at(38, -117)), kMile, 7, turn});
    for (std::size_t i = 1; i < pattern.legs.size(); ++i) {
      EXPECT_NEAR(turn_between(pattern.legs[i - 1].line.end_track, pattern.legs[i].line.start_track)
                      .degrees(),
                  turn == Turn::right ? 90 : -90, 0.1);
    }
  }
}

// All ground beside the route: half a spacing, and inside a bend of angle b 1 / (1 + cos(b/2)).
TEST(TrackLine, LeavesNoGap) {
  for (const double bend : {-120.0, -60.0, 0.0, 30.0, 90.0}) {
    const Path route = bent_route(at(45, 179.95), Angle::degrees(bend));
    const double worst = 1 / (1 + std::cos(bend / 2 * std::acos(-1.0) / 180));
    const FlatGround ground(route[1]);
    const FlatGround::Line flat_route = ground.flat(route);
    for (const int passes : {2, 3, 5, 6}) {
      boost::geometry::model::multi_linestring<FlatGround::Line> flown;
      for (const Leg& leg : search_legs(make_track_line({route, kMile, passes, Turn::right}))) {
        flown.push_back(ground.flat(Path{leg.from, leg.to}));
      }
      double found = 0;
      for (const Leg& leg : legs_of(route)) {
        for (double share = 0; share <= 1.001; share += 0.01) {
          const Arrival on_route = travel(leg.from, leg.line.start_track, leg.line.length * share);
          for (double aside = -passes / 2.0; aside <= passes / 2.0; aside += 0.0625) {
            const FlatGround::Point place = ground.flat(
                travel(on_route.position, on_route.track + Angle::degrees(90), kMile * aside)
                    .position);
            // Ground inside the bend may be nearer to the other leg: then that leg's place counts.
            const double off_route = boost::geometry::distance(place, flat_route) / 1852;
            if (off_route < std::abs(aside) * 0.999) continue;
            found = std::max(found, boost::geometry::distance(place, flown) / 1852);
          }
        }
      }
      EXPECT_LE(found, worst * 1.001) << "bend " << bend << ", passes " << passes;
      EXPECT_GE(found, worst * 0.85) << "bend " << bend << ", passes " << passes;
    }
  }
}

TEST(TrackLine, SaysWhatASharpBendLeaves) {
  const Pattern pattern =
      make_track_line({bent_route(at(0, 0), Angle::degrees(120)), kMile, 2, Turn::right});
  ASSERT_EQ(pattern.remarks.size(), 1u);
  EXPECT_NE(pattern.remarks[0].find("0.67 track spacings"), std::string::npos);
}

TEST(TrackLine, RefusesWhatCannotBeFlown) {
  const Path route = straight_route(at(0, 0));
  const auto track_line = [](const Path& along, Length spacing, int passes) {
    return make_track_line({along, spacing, passes, Turn::right});
  };
  EXPECT_THROW(track_line(route, Length(), 2), Error);
  EXPECT_THROW(track_line(route, kMile, 0), Error);
  EXPECT_THROW(track_line(route, kMile, 51), Error);
  EXPECT_THROW(track_line(route, kMile * 30, 50), Error);
  EXPECT_THROW(track_line({at(0, 0)}, kMile, 2), Error);
}

}  // namespace
}  // namespace sweepwright::pattern
