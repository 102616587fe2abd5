#include "sweepwright/flight/wind_triangle.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::flight {
namespace {

using test::CheckRow;
using testing::HasSubstr;

/// The row's unit does not matter to a triangle; it is kept all the same.
Speed in_unit_of(const CheckRow& row, const std::string& column) {
  const double value = row.number(column);
  return row.text("unit") == "mph" ? Speed::statute_miles_per_hour(value) : Speed::knots(value);
}

double units(const CheckRow& row, Speed speed) {
  return row.text("unit") == "mph" ? speed.statute_miles_per_hour() : speed.knots();
}

double degrees_between(TrueDirection a, TrueDirection b) {
  return std::abs(turn_between(a, b).degrees());
}

class PublishedTriangle : public testing::TestWithParam<CheckRow> {
 protected:
  const CheckRow& row = GetParam();
  TrueDirection track = TrueDirection::degrees(row.number("true_course_deg"));
  TrueDirection heading = TrueDirection::degrees(row.number("true_heading_deg"));
  Speed airspeed = in_unit_of(row, "tas");
  Speed ground_speed = in_unit_of(row, "groundspeed");
  Wind wind{TrueDirection::degrees(row.number("wind_from_deg")), in_unit_of(row, "wind_speed")};
  double angle_tolerance = row.number("angle_tolerance_deg");
  double speed_tolerance = row.number("speed_tolerance");
};

TEST_P(PublishedTriangle, GivesHeadingAndGroundSpeed) {
  const WindTriangle found = triangle_for_track(track, airspeed, wind);
  EXPECT_LE(degrees_between(found.heading, heading), angle_tolerance);
  EXPECT_NEAR(found.wind_correction.degrees(), row.number("wca_deg_right_positive"),
              angle_tolerance);
  EXPECT_NEAR(units(row, found.ground_speed), row.number("groundspeed"), speed_tolerance);
}

TEST_P(PublishedTriangle, GivesTrack) {
  const WindTriangle found = triangle_for_heading(heading, airspeed, wind);
  EXPECT_LE(degrees_between(found.track, track), angle_tolerance * 1.5);
  EXPECT_NEAR(units(row, found.ground_speed), row.number("groundspeed"), speed_tolerance * 1.5);
}

TEST_P(PublishedTriangle, GivesWind) {
  const Wind found = wind_from({heading, airspeed, track, ground_speed});
  // A hundredth of a degree of heading is 0.04 kt across at 250 kt.
  EXPECT_NEAR(units(row, found.speed), row.number("wind_speed"), 0.03 + speed_tolerance);
  if (wind.speed > Speed()) {
    EXPECT_LE(degrees_between(found.from, wind.from), 0.1);
  }
}

INSTANTIATE_TEST_SUITE_P(Published, PublishedTriangle,
                         testing::ValuesIn(test::check_rows(
                             "flight/wind_triangle.csv",
                             {"id", "true_course_deg", "tas", "wind_from_deg", "wind_speed", "unit",
                              "wca_deg_right_positive", "true_heading_deg", "groundspeed",
                              "angle_tolerance_deg", "speed_tolerance", "how", "source", "note"})),
                         test::RowName());

/// Random triangles that can be flown.
template <typename Check>
void for_random_triangles(Check check) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> any_direction(0, 360);
  std::uniform_real_distribution<double> wind_share(0, 0.95);
  for (int i = 0; i < 2000; ++i) {
    const Speed airspeed = Speed::knots(60 + i % 200);
    const Wind wind{TrueDirection::degrees(any_direction(random)), airspeed * wind_share(random)};
    check(TrueDirection::degrees(any_direction(random)), airspeed, wind);
  }
}

TEST(WindTriangle, P1_VectorsCloseTheTriangle) {
  for_random_triangles([](TrueDirection track, Speed airspeed, const Wind& wind) {
    const WindTriangle found = triangle_for_track(track, airspeed, wind);
    const Velocity gap = make_velocity(found.heading, airspeed) + velocity(wind) -
                         make_velocity(found.track, found.ground_speed);
    EXPECT_LE(speed(gap) / airspeed, 1e-12);
  });
}

TEST(WindTriangle, P2_TheThreeQuestionsAnswerEachOther) {
  for_random_triangles([](TrueDirection track, Speed airspeed, const Wind& wind) {
    const WindTriangle found = triangle_for_track(track, airspeed, wind);
    const WindTriangle back = triangle_for_heading(found.heading, airspeed, wind);
    EXPECT_LE(degrees_between(back.track, track), 1e-9);
    EXPECT_NEAR(back.ground_speed / found.ground_speed, 1, 1e-12);
    EXPECT_NEAR(back.wind_correction.degrees(), found.wind_correction.degrees(), 1e-9);
    const Wind again = wind_from({found.heading, airspeed, track, found.ground_speed});
    EXPECT_LE(speed(velocity(again) - velocity(wind)) / airspeed, 1e-12);
  });
}

TEST(WindTriangle, P3_ReversedWindAndTrackMirror) {
  for_random_triangles([](TrueDirection track, Speed airspeed, const Wind& wind) {
    const WindTriangle there = triangle_for_track(track, airspeed, wind);
    const WindTriangle mirrored =
        triangle_for_track(track.reversed(), airspeed, {wind.from.reversed(), wind.speed});
    EXPECT_NEAR(mirrored.ground_speed / there.ground_speed, 1, 1e-12);
    EXPECT_NEAR(mirrored.wind_correction.degrees(), there.wind_correction.degrees(), 1e-9);
  });
}

TEST(WindTriangle, RefusesWhatCannotBeFlown) {
  const auto refusal = [](double track, double airspeed_kt, double from, double wind_kt) {
    try {
      triangle_for_track(TrueDirection::degrees(track), Speed::knots(airspeed_kt),
                         {TrueDirection::degrees(from), Speed::knots(wind_kt)});
    } catch (const Error& error) {
      return std::string(name(error.code())) + ": " + error.message();
    }
    return std::string("flown");
  };
  EXPECT_THAT(refusal(90, 30, 0, 40), HasSubstr("impossible: track 090T cannot be flown"));
  EXPECT_THAT(refusal(90, 30, 0, 40), HasSubstr("the wind across it is 40.0 kt"));
  EXPECT_THAT(refusal(90, 30, 90, 40), HasSubstr("the ground speed would be -10.0 kt"));
  EXPECT_THAT(refusal(90, 30, 90, 29.5), HasSubstr("the ground speed would be 0.5 kt"));
  EXPECT_THAT(refusal(90, 0, 90, 10), HasSubstr("value: the true airspeed is 0.0 kt"));
  EXPECT_THAT(refusal(90, NAN, 90, 10), HasSubstr("value: the true airspeed"));
  EXPECT_THAT(refusal(90, 90, 90, -10), HasSubstr("value: the wind speed is -10.0 kt"));
  // A wind along the track may be stronger than the airspeed: it carries the crew.
  EXPECT_EQ(refusal(90, 30, 270, 40), "flown");
}

TEST(WindTriangle, AStrongWindCarriesACrewBackwards) {
  const WindTriangle found = triangle_for_heading(TrueDirection::degrees(90), Speed::knots(30),
                                                  {TrueDirection::degrees(90), Speed::knots(40)});
  EXPECT_NEAR(found.ground_speed.knots(), 10, 1e-9);
  EXPECT_NEAR(found.track.degrees(), 270, 1e-9);
}

}  // namespace
}  // namespace sweepwright::flight
