#include "sweepwright/flight/join.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "sweepwright/base/error.hpp"
#include "sweepwright/flight/corner.hpp"

namespace sweepwright::flight {
namespace {

constexpr double kCircle = 2 * std::numbers::pi;

TurningFlight flight_in(Wind wind) {
  return {Speed::knots(90), kStandardRate, velocity(wind)};
}

double radius_metres(const TurningFlight& flight) {
  return turn_radius(flight.rate, flight.true_airspeed).metres();
}

/// Where the parts of a join lead.
Offset end_of(const Join& join, const TurningFlight& flight) {
  Offset at = way_over_ground(join.arcs[0], flight);
  at = at + (make_velocity(join.straight.track, join.straight.ground_speed)) * join.straight.time;
  at = at + way_over_ground(join.arcs[1], flight);
  return at + way_over_ground(join.arcs[2], flight);
}

void expect_leads_there(const Join& found, const JoinEnds& ends, const TurningFlight& flight) {
  const Offset miss = end_of(found, flight) - ends.way;
  EXPECT_LT(length(miss).metres(), 0.001) << name(found.form);
  EXPECT_NEAR(turn_between(found.arcs[2].end_heading(), ends.to).degrees(), 0, 1e-5);
  EXPECT_EQ(found.arcs[0].heading, ends.from);
  Duration parts = found.straight.time;
  for (const Arc& arc : found.arcs) parts += arc.time(flight.rate);
  EXPECT_NEAR(parts.count(), found.time.count(), 1e-6);
}

std::vector<JoinEnds> random_ends(const TurningFlight& flight, int count) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> any(0, 360);
  std::uniform_real_distribution<double> far(0, 6);
  std::vector<JoinEnds> all;
  for (int i = 0; i < count; ++i) {
    all.push_back({TrueDirection::degrees(any(random)), TrueDirection::degrees(any(random)),
                   make_offset(TrueDirection::degrees(any(random)),
                               Length::metres(radius_metres(flight) * far(random)))});
  }
  return all;
}

TEST(Join, LeadsOntoTheNextLeg) {
  for (const double knots : {0.0, 5.0, 30.0, 70.0}) {
    const TurningFlight flight = flight_in({TrueDirection::degrees(310), Speed::knots(knots)});
    for (const JoinEnds& ends : random_ends(flight, 500)) {
      expect_leads_there(join(ends, flight), ends, flight);
    }
  }
}

/// The shortest path of bounded curvature in calm air, by the formulas in A. M. Shkel and V.
/// Lumelsky, Classification of the Dubins set, Robotics and Autonomous Systems 34 (2001), section 2
/// (from memory): d the distance in radii, a and b the headings measured counterclockwise from the
/// line between the ends.
double dubins_length(double d, double a, double b) {
  const auto mod = [](double angle) {
    const double rest = std::fmod(angle, kCircle);
    const double positive = rest < 0 ? rest + kCircle : rest;
    return kCircle - positive < 1e-9 ? 0 : positive;
  };
  const double sa = std::sin(a);
  const double sb = std::sin(b);
  const double ca = std::cos(a);
  const double cb = std::cos(b);
  const double cab = std::cos(a - b);
  double best = INFINITY;
  const auto keep = [&](double t, double p, double q) {
    best = std::min(best, mod(t) + p + mod(q));
  };
  double square = 2 + d * d - 2 * cab + 2 * d * (sa - sb);  // left, straight, left
  if (square >= 0) {
    const double angle = std::atan2(cb - ca, d + sa - sb);
    keep(-a + angle, std::sqrt(square), b - angle);
  }
  square = 2 + d * d - 2 * cab + 2 * d * (sb - sa);  // right, straight, right
  if (square >= 0) {
    const double angle = std::atan2(ca - cb, d - sa + sb);
    keep(a - angle, std::sqrt(square), -b + angle);
  }
  square = -2 + d * d + 2 * cab + 2 * d * (sa + sb);  // left, straight, right
  if (square >= 0) {
    const double p = std::sqrt(square);
    const double angle = std::atan2(-ca - cb, d + sa + sb) - std::atan2(-2.0, p);
    keep(-a + angle, p, -b + angle);
  }
  square = d * d - 2 + 2 * cab - 2 * d * (sa + sb);  // right, straight, left
  if (square >= 0) {
    const double p = std::sqrt(square);
    const double angle = std::atan2(ca + cb, d - sa - sb) - std::atan2(2.0, p);
    keep(a - angle, p, b - angle);
  }
  double cosine = (6 - d * d + 2 * cab + 2 * d * (sa - sb)) / 8;  // right, left, right
  if (std::abs(cosine) <= 1) {
    const double p = mod(kCircle - std::acos(cosine));
    const double t = mod(a - std::atan2(ca - cb, d - sa + sb) + p / 2);
    keep(t, p, a - b - t + p);
  }
  cosine = (6 - d * d + 2 * cab + 2 * d * (sb - sa)) / 8;  // left, right, left
  if (std::abs(cosine) <= 1) {
    const double p = mod(kCircle - std::acos(cosine));
    const double t = mod(-a + std::atan2(-ca + cb, d + sa - sb) + p / 2);
    keep(t, p, b - a - t + p);
  }
  return best;
}

TEST(Join, P1_InCalmAirIsTheShortestPath) {
  const TurningFlight flight = flight_in({});
  const double radius = radius_metres(flight);
  const double unit = turn_time(flight.rate, Angle::radians(1)).count();
  for (const JoinEnds& ends : random_ends(flight, 3000)) {
    const double line = direction(ends.way).angle().radians();
    const double shortest =
        dubins_length(length(ends.way).metres() / radius, line - ends.from.angle().radians(),
                      line - ends.to.angle().radians());
    const Join found = join(ends, flight);
    const double flown = found.time.count() / unit;
    EXPECT_GE(flown, shortest - 1e-6);
    EXPECT_LE(flown, shortest + 0.01);
  }
}

TEST(Join, P2_MirroredEndsGiveAMirroredJoin) {
  const auto mirrored = [](TrueDirection d) { return TrueDirection(-d.angle()); };
  const TurningFlight flight = flight_in({TrueDirection::degrees(40), Speed::knots(20)});
  const TurningFlight other = flight_in({TrueDirection::degrees(-40), Speed::knots(20)});
  for (const JoinEnds& ends : random_ends(flight, 300)) {
    const JoinEnds mirror{mirrored(ends.from), mirrored(ends.to), {-ends.way.east, ends.way.north}};
    EXPECT_NEAR(join(ends, flight).time.count(), join(mirror, other).time.count(), 1e-4);
  }
}

/// From the end of one row of a ladder to the next one on the right: headings and way.
Join row_join(double spacing_nm, Wind wind) {
  const TurningFlight flight = flight_in(wind);
  const WindTriangle up = triangle_for_track(TrueDirection(), flight.true_airspeed, wind);
  const WindTriangle down =
      triangle_for_track(TrueDirection::degrees(180), flight.true_airspeed, wind);
  const JoinEnds ends{up.heading, down.heading, {Length::nautical_miles(spacing_nm), Length()}};
  const Join found = join(ends, flight);
  expect_leads_there(found, ends, flight);
  return found;
}

// The turn's diameter is 0.955 NM at 90 kt and 3 degrees a second.
TEST(Join, BetweenRowsIsPlainAboveTheTurnDiameter) {
  const Join wide = row_join(2, {});
  EXPECT_EQ(wide.form, TurnForm::plain);
  // Half a turn in a minute, and 2 - 0.9549 NM at 90 kt in 41.8 s.
  EXPECT_NEAR(wide.time.count(), 60 + (2 - 0.954930) / 90 * 3600, 0.001);
  EXPECT_NEAR(wide.straight.heading.degrees(), 90, 1e-9);
  EXPECT_EQ(row_join(0.96, {}).form, TurnForm::plain);
}

TEST(Join, BetweenRowsIsATeardropBelowTheTurnDiameter) {
  const Join close = row_join(0.5, {});
  EXPECT_EQ(close.form, TurnForm::teardrop);
  // Circles of radius 1 whose outer centres lie s apart: turn out by acos((2 + s) / 4), where s is
  // the spacing in radii, then back by 180 + twice that, then in again.
  const double s = 0.5 / 0.477465;
  const double out = std::acos((2 + s) / 4);
  EXPECT_NEAR(close.time.count(), (std::numbers::pi + 4 * out) / kCircle * 120, 0.001);
}

TEST(Join, WindAcrossTheRowsDecidesTheForm) {
  // Blown onwards, towards the next row and past it: the turn needs more room.
  EXPECT_NE(row_join(0.96, {TrueDirection::degrees(270), Speed::knots(20)}).form, TurnForm::plain);
  // Blown back: a row closer than the diameter can be met by a plain turn.
  EXPECT_EQ(row_join(0.8, {TrueDirection::degrees(90), Speed::knots(20)}).form, TurnForm::plain);
}

TEST(Join, RefusesAWindAboveTheAirspeed) {
  const JoinEnds ends{TrueDirection(), TrueDirection(), {Length::metres(10), Length()}};
  EXPECT_THROW(join(ends, flight_in({TrueDirection(), Speed::knots(95)})), Error);
}

TEST(Corner, P1_LeadsAreThoseOfATangentCircleInCalmAir) {
  const TurningFlight flight = flight_in({});
  for (const double turn : {-140.0, -90.0, -5.0, 30.0, 90.0, 120.0}) {
    const WindTriangle from =
        triangle_for_track(TrueDirection::degrees(20), flight.true_airspeed, {});
    const WindTriangle to =
        triangle_for_track(TrueDirection::degrees(20 + turn), flight.true_airspeed, {});
    const std::optional<Corner> found = corner(from, to, flight);
    ASSERT_TRUE(found);
    const double lead = radius_metres(flight) * std::tan(std::abs(turn) / 2 / kDegreesPerRadian);
    EXPECT_NEAR(found->lead_out.metres(), lead, 1e-6);
    EXPECT_NEAR(found->lead_in.metres(), lead, 1e-6);
    EXPECT_NEAR(found->arc.turned.degrees(), turn, 1e-9);
  }
}

TEST(Corner, BothEndsLieOnTheLegsInTheWind) {
  const Wind wind{TrueDirection::degrees(300), Speed::knots(25)};
  const TurningFlight flight = flight_in(wind);
  int found_count = 0;
  for (int track = 0; track < 360; track += 15) {
    for (const double turn : {-120.0, -90.0, 45.0, 90.0, 120.0}) {
      const WindTriangle from =
          triangle_for_track(TrueDirection::degrees(track), flight.true_airspeed, wind);
      const WindTriangle to =
          triangle_for_track(TrueDirection::degrees(track + turn), flight.true_airspeed, wind);
      const std::optional<Corner> found = corner(from, to, flight);
      if (!found) continue;
      ++found_count;
      const Offset way = way_over_ground(found->arc, flight);
      const Offset along =
          make_offset(from.track, found->lead_out) + make_offset(to.track, found->lead_in);
      EXPECT_LT(length(way - along).metres(), 1e-9 * radius_metres(flight) + 1e-6);
      EXPECT_NEAR(turn_between(found->arc.end_heading(), to.heading).degrees(), 0, 1e-9);
    }
  }
  EXPECT_GT(found_count, 100);
}

TEST(Corner, IsNotCutWhenTooSharpOrNone) {
  const TurningFlight flight = flight_in({});
  const auto turned = [&](double degrees) {
    return corner(triangle_for_track(TrueDirection(), flight.true_airspeed, {}),
                  triangle_for_track(TrueDirection::degrees(degrees), flight.true_airspeed, {}),
                  flight)
        .has_value();
  };
  EXPECT_FALSE(turned(0.5));
  EXPECT_TRUE(turned(149));
  EXPECT_FALSE(turned(180));
  EXPECT_FALSE(turned(-160));
}

}  // namespace
}  // namespace sweepwright::flight
