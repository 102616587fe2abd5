#include "sweepwright/flight/daylight.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/flight/glare.hpp"
#include "sweepwright/flight/sun.hpp"
#include "sweepwright/formats/local_time.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::flight {
namespace {

using test::at;
using test::CheckRow;

TimePoint utc(const std::string& text) {
  return formats::parse_local_time(text).time;
}

std::chrono::year_month_day date(const std::string& text) {
  return std::chrono::floor<std::chrono::days>(utc(text + "T00:00Z"));
}

void expect_time(const std::optional<TimePoint>& found, const CheckRow& row,
                 const std::string& column, double tolerance_s) {
  ASSERT_EQ(found.has_value(), !row.empty(column)) << row.place() << " " << column;
  if (!found) return;
  EXPECT_NEAR(Duration(*found - utc(row.text(column))).count(), 0, tolerance_s)
      << row.place() << " " << column;
}

class PublishedDaylight : public testing::TestWithParam<CheckRow> {};

TEST_P(PublishedDaylight, IsMet) {
  const CheckRow& row = GetParam();
  const Daylight found =
      daylight(at(row.number("lat_deg"), row.number("lon_deg")), date(row.text("local_date")));
  // The sun crosses the height at a shallow angle in high latitudes: seconds become more.
  const double tolerance = std::abs(row.number("lat_deg")) < 60 ? 15 : 60;
  expect_time(found.sun.rise, row, "sunrise_utc", tolerance);
  expect_time(found.sun.set, row, "sunset_utc", tolerance);
  expect_time(found.civil_twilight.rise, row, "civil_dawn_utc", tolerance);
  expect_time(found.civil_twilight.set, row, "civil_dusk_utc", tolerance);
}

INSTANTIATE_TEST_SUITE_P(
    Library, PublishedDaylight,
    testing::ValuesIn(test::check_rows("flight/daylight.csv",
                                       {"place", "lat_deg", "lon_deg", "local_date",
                                        "civil_dawn_utc", "sunrise_utc", "sunset_utc",
                                        "civil_dusk_utc", "max_diff_s_vs_second_package", "note"})),
    test::RowName());

TEST(Daylight, AgreesWithALibraryOnAThousandPlaceDays) {
  for (const CheckRow& row :
       test::check_rows("flight/sun_random.csv",
                        {"latitude_deg", "longitude_deg", "local_date", "civil_dawn", "sunrise",
                         "sunset", "civil_dusk", "probe_time", "azimuth_deg", "elevation_deg"})) {
    const Position place = at(row.number("latitude_deg"), row.number("longitude_deg"));
    const Daylight found = daylight(place, date(row.text("local_date")));
    const double tolerance = std::abs(row.number("latitude_deg")) < 60 ? 10 : 120;
    expect_time(found.sun.rise, row, "sunrise", tolerance);
    expect_time(found.sun.set, row, "sunset", tolerance);
    expect_time(found.civil_twilight.rise, row, "civil_dawn", tolerance);
    expect_time(found.civil_twilight.set, row, "civil_dusk", tolerance);
    const SunPosition sun = sun_position(place, utc(row.text("probe_time")));
    EXPECT_NEAR(sun.elevation.degrees(), row.number("elevation_deg"), 0.02) << row.place();
    const double azimuth_error =
        turn_between(sun.azimuth, TrueDirection::degrees(row.number("azimuth_deg"))).degrees();
    EXPECT_NEAR(azimuth_error * std::cos(sun.elevation.radians()), 0, 0.02) << row.place();
  }
}

// Named cases: the sun of midsummer never sets north of 66.6 degrees, that of midwinter never rises
// north of 67.4 [latitudes of the polar circle and refraction, from memory].
TEST(Daylight, PolarDayAndNightHaveTheirName) {
  const auto june = date("2026-06-21");
  const auto december = date("2026-12-21");
  for (const double latitude : {71.29, 78.2, 89.9, 90.0}) {
    EXPECT_EQ(daylight(at(latitude, 20), june).sun.state, SunState::above);
    EXPECT_EQ(daylight(at(latitude, 20), december).sun.state, SunState::below);
    EXPECT_EQ(daylight(at(-latitude, 20), june).sun.state, SunState::below);
    EXPECT_EQ(daylight(at(-latitude, 20), december).sun.state, SunState::above);
  }
  const Daylight twilight = daylight(at(71.29, -156.79), december);
  EXPECT_EQ(twilight.sun.state, SunState::below);
  EXPECT_EQ(twilight.civil_twilight.state, SunState::crosses);
  EXPECT_EQ(daylight(at(80, 0), december).civil_twilight.state, SunState::below);
}

TEST(Daylight, TimeInLightIsCutToTheDay) {
  const Position place = at(0, 0);
  const Daylight day = daylight(place, date("2026-03-20"));
  const auto hours = [](double h) { return Duration(h * 3600); };
  EXPECT_NEAR(time_in_light(place, *day.sun.rise, *day.sun.set).count(),
              Duration(*day.sun.set - *day.sun.rise).count(), 1);
  EXPECT_NEAR(time_in_light(place, *day.sun.set - std::chrono::hours(1),
                            *day.sun.set + std::chrono::hours(3))
                  .count(),
              3600, 2);
  EXPECT_EQ(time_in_light(place, *day.sun.set + std::chrono::hours(1),
                          *day.sun.set + std::chrono::hours(3))
                .count(),
            0);
  const TimePoint june = utc("2026-06-21T00:00Z");
  EXPECT_NEAR(time_in_light(at(78, 16), june, june + std::chrono::hours(72)).count(),
              hours(72).count(), 2);
  EXPECT_EQ(time_in_light(at(-78, 16), june, june + std::chrono::hours(72)).count(), 0);
  // Ten days on the equator: twelve hours and seven minutes of each.
  EXPECT_NEAR(time_in_light(place, june, june + std::chrono::hours(240)).count() / 10 / 3600, 12.12,
              0.02);
}

TEST(Glare, ALowSunAheadBlinds) {
  const SunPosition low{TrueDirection::degrees(285), Angle::degrees(12)};
  EXPECT_TRUE(is_low(low));
  EXPECT_TRUE(faces(TrueDirection::degrees(270), low));
  EXPECT_TRUE(faces(TrueDirection::degrees(310), low));
  EXPECT_FALSE(faces(TrueDirection::degrees(90), low));
  EXPECT_FALSE(faces(TrueDirection::degrees(330), low));
  EXPECT_NEAR(leg_direction_across(low)->degrees(), 15, 1e-9);
  EXPECT_FALSE(leg_direction_across({low.azimuth, Angle::degrees(50)}));
  EXPECT_FALSE(leg_direction_across({low.azimuth, Angle::degrees(-1)}));
}

TEST(Glare, CountsTheLegsThatFaceTheSun) {
  // An hour before sunset at the equator the sun stands 15 degrees high in the west.
  const Position place = at(0, 0);
  const Daylight day = daylight(place, date("2026-03-20"));
  const Aircraft aircraft{
      .true_airspeed = Speed::knots(90), .transit_airspeed = {}, .fuel_flow = {}};
  const auto into_sun = [&](double track) {
    const pattern::Pattern pattern = pattern::make_parallel_track(
        {place, TrueDirection::degrees(track), Length::nautical_miles(3), Length::nautical_miles(2),
         4, pattern::Turn::right});
    return time_into_sun(
        fly(pattern, aircraft, {}, {.depart = *day.sun.set - std::chrono::hours(1)}));
  };
  EXPECT_NEAR(into_sun(90).count(), 2 * 3 / 90.0 * 3600, 0.1);  // two of the four legs
  EXPECT_EQ(into_sun(0).count(), 0);
}

}  // namespace
}  // namespace sweepwright::flight
