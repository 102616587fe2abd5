// Promises P1 to P3 of clearance.hpp; a cone as closed form.
#include "sweepwright/terrain/clearance.hpp"

#include <gtest/gtest.h>

#include "support/elevation.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::terrain {
namespace {

using test::at;
using test::Cone;
using test::degrees_lattice;
using test::kGap;
using test::make_tile;

constexpr double kStep = 1.0 / 1200;

/// Ground with a cone of 1,500 m top and 100 m below its foot's height at 38 N 117 W.
ElevationTile hill() {
  return make_tile(degrees_lattice(38.1, -117.15, kStep), 241, 361, [](Position place) {
    return std::max(300.0, Cone{at(38, -117), 1500, 0.25}(place));
  });
}

// Passes 1 NM north of the summit, from west to east.
Path passing_line() {
  return {at(38 + 1.0 / 60, -117.1), at(38 + 1.0 / 60, -116.9)};
}

Corridor passing() {
  return make_corridor(ElevationModel({hill()}), passing_line());
}

// Closed form: the corridor's south edge comes to 0.5 NM from the summit, where the cone is
// 1500 - 0.25 x 926 m high; cells reach a step (93 m) further.
TEST(Clearance, OfAConeIsLeastNearTheSummit) {
  const Corridor corridor = passing();
  const Clearance clearance =
      check_clearance(corridor, constant_height(corridor, Length::metres(1600)));
  ASSERT_TRUE(clearance.least);
  const double at_edge = 1500 - 0.25 * 926;
  EXPECT_GE(clearance.least->ground.height.metres(), at_edge - 0.25 * 5);
  EXPECT_LE(clearance.least->ground.height.metres(), at_edge + 0.25 * 1.5 * 93);
  EXPECT_EQ(clearance.least->clearance, Length::metres(1600) - clearance.least->ground.height);
  EXPECT_EQ(clearance.least->ground.height, highest(corridor)->height);
  const CorridorPiece& piece = corridor.pieces[clearance.least->piece];
  EXPECT_LT(piece.start.longitude().degrees(), -116.99);
  EXPECT_GT(piece.end.longitude().degrees(), -117.01);
}

TEST(Clearance, P2ClassesByTheMinimum) {
  const Corridor corridor = passing();
  const Length minimum = Length::metres(300);
  for (const double altitude_m : {1200.0, 1500.0, 1650.0, 2500.0}) {
    const Length altitude = Length::metres(altitude_m);
    const Clearance clearance =
        check_clearance(corridor, constant_height(corridor, altitude), minimum);
    ASSERT_EQ(clearance.pieces.size(), corridor.pieces.size());
    for (std::size_t i = 0; i < corridor.pieces.size(); ++i) {
      const Length air = altitude - corridor.pieces[i].highest->height;
      const ClearanceClass expected = air < minimum         ? ClearanceClass::below_minimum
                                      : air < 1.5 * minimum ? ClearanceClass::marginal
                                                            : ClearanceClass::clear;
      EXPECT_EQ(clearance.pieces[i], expected);
    }
    std::size_t next = 0;
    for (const ClearanceRun& run : clearance.runs) {
      EXPECT_EQ(run.first, next);
      for (std::size_t i = run.first; i <= run.last; ++i) {
        EXPECT_EQ(clearance.pieces[i], run.clearance);
      }
      next = run.last + 1;
    }
    EXPECT_EQ(next, corridor.pieces.size());
  }
}

TEST(Clearance, P1WhatIsNotKnownIsNeverClear) {
  ElevationTile ground = hill();
  ground.heights_m[ground.index(100, 60)] = kGap;  // on the line, west of the hill
  const Corridor corridor = make_corridor(ElevationModel({ground}), passing_line());
  const Clearance high = check_clearance(corridor, constant_height(corridor, Length::metres(9000)));
  EXPECT_TRUE(has(high, ClearanceClass::not_checked));
  EXPECT_TRUE(has(high, ClearanceClass::clear));
  for (std::size_t i = 0; i < corridor.pieces.size(); ++i) {
    EXPECT_EQ(high.pieces[i] == ClearanceClass::not_checked, !corridor.pieces[i].known);
  }
  // Ground that is known and too high is below minimum, gap or not.
  const Clearance low = check_clearance(corridor, constant_height(corridor, Length::metres(400)));
  for (const ClearanceClass piece : low.pieces) EXPECT_EQ(piece, ClearanceClass::below_minimum);
  EXPECT_FALSE(safe_altitude(corridor));

  const Corridor nothing = make_corridor(ElevationModel(), passing_line());
  const Clearance unknown =
      check_clearance(nothing, constant_height(nothing, Length::metres(9000)));
  EXPECT_FALSE(unknown.least);
  EXPECT_EQ(unknown.runs.size(), 1u);
  EXPECT_EQ(unknown.runs[0].clearance, ClearanceClass::not_checked);
}

TEST(Clearance, SafeAltitudesAreWholeHundredsOfFeet) {
  const auto safe = [](double ground_ft, double minimum_ft) {
    return safe_altitude(Length::feet(ground_ft), Length::feet(minimum_ft)).feet();
  };
  EXPECT_DOUBLE_EQ(safe(4000, 1000), 5000);
  EXPECT_DOUBLE_EQ(safe(4001, 1000), 5100);
  EXPECT_DOUBLE_EQ(safe(4099, 500), 4600);
  EXPECT_DOUBLE_EQ(safe(-200, 50), -100);
}

TEST(Clearance, P3SafeHeightsKeepTheMinimum) {
  const Path path = {at(38.05, -117.1), at(38.05, -116.9), at(37.99, -116.9), at(37.95, -117.1)};
  const ElevationModel model(
      {make_tile(degrees_lattice(38.1, -117.15, kStep), 241, 361, [](Position place) {
        return std::max(300.0, Cone{at(38, -117), 1500, 0.25}(place));
      })});
  const Corridor corridor = make_corridor(model, path);
  const Length minimum = Length::feet(700);
  const Length shortest = Length::nautical_miles(2);
  const HeightPlan whole = constant_height(corridor, *safe_altitude(corridor, minimum));
  const HeightPlan legs = safe_heights_by_leg(corridor, minimum);
  const HeightPlan steps = safe_heights_in_steps(corridor, shortest, minimum);
  EXPECT_EQ(legs.size(), 3u);
  EXPECT_GT(steps.size(), legs.size());
  for (const HeightPlan& plan : {whole, legs, steps}) {
    EXPECT_FALSE(has(check_clearance(corridor, plan, minimum), ClearanceClass::below_minimum));
    EXPECT_FALSE(has(check_clearance(corridor, plan, minimum), ClearanceClass::not_checked));
  }
  // A hundred feet less anywhere, and the minimum is broken there.
  for (std::size_t i = 0; i < legs.size(); ++i) {
    HeightPlan lower = legs;
    lower[i].altitude = *lower[i].altitude - Length::feet(100);
    EXPECT_TRUE(has(check_clearance(corridor, lower, minimum), ClearanceClass::below_minimum));
  }
  Length before;
  for (const HeightStep& step : steps) {
    EXPECT_GE(step.to - before, shortest * 0.999);
    before = step.to;
  }
}

TEST(Clearance, AGapTakesTheHeightFromItsStepOnly) {
  ElevationTile ground = hill();
  ground.heights_m[ground.index(100, 60)] = kGap;
  const Corridor corridor = make_corridor(ElevationModel({ground}), passing_line());
  const HeightPlan steps = safe_heights_in_steps(corridor, Length::nautical_miles(1));
  EXPECT_TRUE(std::any_of(steps.begin(), steps.end(), [](auto s) { return !s.altitude; }));
  EXPECT_TRUE(std::any_of(steps.begin(), steps.end(), [](auto s) { return s.altitude; }));
  EXPECT_TRUE(has(check_clearance(corridor, steps), ClearanceClass::not_checked));
}

TEST(Clearance, RefusesPlansThatDoNotFit) {
  const Corridor corridor = passing();
  const Length high = Length::metres(3000);
  EXPECT_THROW(check_clearance(corridor, {}), Error);
  EXPECT_THROW(check_clearance(corridor, {{length(corridor) / 2, high}}), Error);
  EXPECT_THROW(check_clearance(corridor, {{length(corridor), high}, {length(corridor), high}}),
               Error);
  EXPECT_THROW(check_clearance(corridor, constant_height(corridor, high), Length::metres(-1)),
               Error);
}

}  // namespace
}  // namespace sweepwright::terrain
