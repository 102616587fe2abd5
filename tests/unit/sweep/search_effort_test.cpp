#include "sweepwright/sweep/search_effort.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

using std::chrono::hours;

class SearchEffort : public testing::TestWithParam<test::CheckRow> {};

TEST_P(SearchEffort, GivesTheWorkedExample) {
  const test::CheckRow& row = GetParam();
  const Length width = Length::nautical_miles(row.number("sweep_width_nm"));
  const Duration endurance = search_endurance(Duration(3600 * row.number("on_scene_h")));
  EXPECT_NEAR(endurance.count() / 3600, row.number("search_endurance_h"), 1e-12);
  const Area effort = search_effort(width, Speed::knots(row.number("speed_kt")), endurance);
  EXPECT_NEAR(effort.square_nautical_miles() / row.number("effort_nm2"), 1, 1e-12);
  const Coverage bought =
      coverage_of_effort(effort, Area::square_nautical_miles(row.number("area_nm2")));
  EXPECT_NEAR(bought.value() / row.number("coverage"), 1, 1e-12);
  constexpr double kPrinted = 5.1e-5;  // four decimals
  EXPECT_NEAR(track_spacing(width, bought).nautical_miles(), row.number("spacing_nm"), kPrinted);
  EXPECT_NEAR(probability_of_detection(DetectionLaw::exponential, bought).value(),
              row.number("pod_exponential"), kPrinted);
  EXPECT_NEAR(probability_of_detection(DetectionLaw::inverse_cube, bought).value(),
              row.number("pod_inverse_cube"), kPrinted);
}

INSTANTIATE_TEST_SUITE_P(
    Reference, SearchEffort,
    testing::ValuesIn(test::check_rows("sweep/search_effort.csv",
                                       {"sweep_width_nm", "speed_kt", "on_scene_h", "area_nm2",
                                        "search_endurance_h", "effort_nm2", "coverage",
                                        "spacing_nm", "pod_exponential", "pod_inverse_cube"})),
    test::RowName());

TEST(SearchEffortPromise1, SearchTimeUndoesCoverage) {
  for (double width = 0.1; width < 10; width *= 1.7) {
    for (double knots = 2; knots < 300; knots *= 2.1) {
      const SweepRate rate{Length::nautical_miles(width), Speed::knots(knots)};
      const Area area = Area::square_nautical_miles(400);
      const Duration time = search_time_for(Coverage(1.3), area, rate);
      const Area effort = search_effort(rate.sweep_width, rate.search_speed, time);
      EXPECT_NEAR(coverage_of_effort(effort, area).value() / 1.3, 1, 1e-14);
      EXPECT_NEAR(search_endurance(on_scene_endurance_for(time)) / time, 1, 1e-14);
    }
  }
}

TEST(SearchEffortErrors, RefusesWhatIsNotAbove0) {
  const Length width = Length::nautical_miles(1);
  const Speed speed = Speed::knots(90);
  EXPECT_THROW(search_effort(Length(), speed, hours(1)), Error);
  EXPECT_THROW(search_effort(width, Speed(), hours(1)), Error);
  EXPECT_THROW(search_effort(width, speed, hours(-1)), Error);
  EXPECT_THROW(search_effort(width, speed, Duration(std::nan(""))), Error);
  EXPECT_THROW(search_endurance(hours(-1)), Error);
  EXPECT_THROW(coverage_of_effort(Area::square_metres(1), Area()), Error);
  EXPECT_THROW(coverage_of_effort(Area::square_metres(-1), Area::square_metres(1)), Error);
  EXPECT_EQ(search_effort(width, speed, hours(0)), Area());
  const Area area = Area::square_nautical_miles(1);
  EXPECT_THROW(search_time_for(Coverage(), area, {width, speed}), Error);
  EXPECT_THROW(search_time_for(Coverage(1), Area(), {width, speed}), Error);
  EXPECT_THROW(search_time_for(Coverage(1), area, {width, Speed()}), Error);
  EXPECT_THROW(search_time_for(Coverage(1), area, {Length(), speed}), Error);
  EXPECT_THROW(on_scene_endurance_for(hours(-1)), Error);
}

}  // namespace
}  // namespace sweepwright::sweep
