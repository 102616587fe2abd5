#include "sweepwright/effort/available.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "sweepwright/base/error.hpp"

namespace sweepwright::effort {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using testing::HasSubstr;

// Five hours of endurance, 60 NM out at 120 kt and back against the wind at 90 kt, 45 min reserve:
// 5 h - 30 min - 40 min - 45 min = 3 h 5 min on scene. By hand.
TimeAway five_hours() {
  return {hours(5), transit_time(Length::nautical_miles(60), Speed::knots(120)),
          transit_time(Length::nautical_miles(60), Speed::knots(90)), minutes(45)};
}

Unit unit(Length width, Speed speed, Duration time) {
  return {"Lark 1", width, speed, time};
}

TEST(Available, takes_off_the_ways_and_the_reserve_then_15_percent) {
  EXPECT_NEAR(on_scene_endurance(five_hours()).count(), 185 * 60, 1e-9);
  const Unit made = make_unit("Lark 1", Length::nautical_miles(1), Speed::knots(90), five_hours());
  // 85 percent: Joint Pub 3-50 Volume I, paragraph 532.B (seen).
  EXPECT_NEAR(made.search_time.count(), 0.85 * 185 * 60, 1e-9);
  EXPECT_NEAR(swept_per_hour(made).square_nautical_miles(), 90, 1e-10);
  EXPECT_NEAR(search_effort(made).square_nautical_miles(), 90 * 0.85 * 185 / 60, 1e-9);
}

// The worked example of tests/checks/sweep/search_effort.csv: W 2 NM, 90 kt, 4 h on scene: 612 NM2.
TEST(Available, adds_up_over_units) {
  const std::vector<Unit> units{
      make_unit("Lark 1", Length::nautical_miles(2), Speed::knots(90), {.endurance = hours(4)}),
      unit(Length::nautical_miles(1), Speed::knots(10), hours(2))};
  EXPECT_NEAR(total_effort(units).square_nautical_miles(), 612 + 20, 1e-9);
  const std::vector<Unit> twice = with_hours_for(units, Area::square_nautical_miles(1264));
  EXPECT_NEAR(twice[0].search_time.count(), 2 * 3.4 * 3600, 1e-6);
  EXPECT_NEAR(total_effort(twice).square_nautical_miles(), 1264, 1e-9);
}

template <typename Call>
std::string fault(Call call, ErrorCode code) {
  try {
    call();
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), code);
    return error.what();
  }
  return "no error";
}

TEST(AvailableErrors, hours_under_the_transit_time_say_what_took_them) {
  const TimeAway away{hours(1), minutes(30), minutes(40), minutes(45)};
  const std::string text =
      fault([&] { make_unit("Lark 1", Length::nautical_miles(1), Speed::knots(90), away); },
            ErrorCode::impossible);
  EXPECT_THAT(text, HasSubstr("unit Lark 1"));
  EXPECT_THAT(text, HasSubstr("the way out takes 0:30, the way back 0:40"));
  EXPECT_THAT(text, HasSubstr("reserve is 0:45"));
}

TEST(AvailableErrors, no_units_no_width_no_time) {
  EXPECT_THAT(fault([] { total_effort({}); }, ErrorCode::value), HasSubstr("no units"));
  const Speed speed = Speed::knots(90);
  EXPECT_THAT(fault([&] { search_effort(unit(Length(), speed, hours(1))); }, ErrorCode::value),
              HasSubstr("sweep width"));
  EXPECT_THAT(
      fault([&] { search_effort(unit(Length::metres(9), speed, hours(0))); }, ErrorCode::value),
      HasSubstr("search time is 0"));
}

TEST(AvailableErrors, a_wind_that_leaves_no_headway) {
  EXPECT_THAT(
      fault([] { transit_time(Length::nautical_miles(9), Speed::knots(-3)); }, ErrorCode::value),
      HasSubstr("-3 kt"));
  EXPECT_THROW(transit_time(Length::nautical_miles(-1), Speed::knots(90)), Error);
  EXPECT_THROW(on_scene_endurance({.endurance = Duration(std::nan(""))}), Error);
  EXPECT_THROW(on_scene_endurance({.endurance = hours(4), .reserve = minutes(-1)}), Error);
}

}  // namespace
}  // namespace sweepwright::effort
