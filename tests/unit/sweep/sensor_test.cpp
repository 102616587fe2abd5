#include "sweepwright/sweep/sensor.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

using testing::HasSubstr;

class RangeFactor : public testing::TestWithParam<test::CheckRow> {};

TEST_P(RangeFactor, IsThePrintedOneAndStandsInTheWorking) {
  const std::string kind = GetParam().text("kind");
  const double printed = GetParam().number("factor");
  const Length range = Length::nautical_miles(8);
  const SweepWidth found = GetParam().text("sensor") == "electronic"
                               ? electronic_sweep_width(range, parse_range_kind(kind))
                               : ground_team_sweep_width(range, parse_contrast(kind));
  EXPECT_NEAR(found.width.nautical_miles(), 8 * printed, 8 * 1e-12);
  double product = found.width / range;
  for (const WorkingLine& line : found.working) product /= line.factor.value_or(1);
  EXPECT_NEAR(product, 1, 1e-12);
  EXPECT_THAT(format_working(found.working),
              HasSubstr(GetParam().text("sensor") == "electronic" ? "535.D" : "doi"));
  EXPECT_EQ(found.cautions.size(), 1u);
}

INSTANTIATE_TEST_SUITE_P(Reference, RangeFactor,
                         testing::ValuesIn(test::check_rows("sweep/range_factors.csv",
                                                            {"sensor", "kind", "factor"})),
                         test::RowName());

class RadioHorizon : public testing::TestWithParam<test::CheckRow> {};

TEST_P(RadioHorizon, IsThatOfTheStandard) {
  const Length found = radio_horizon({Length::feet(GetParam().number("searcher_ft")),
                                      Length::feet(GetParam().number("beacon_ft"))});
  // 1.23 is rounded to 0.4 percent.
  EXPECT_NEAR(found.nautical_miles() / GetParam().number("horizon_nm"), 1, 0.004);
}

INSTANTIATE_TEST_SUITE_P(Reference, RadioHorizon,
                         testing::ValuesIn(test::check_rows("sweep/radio_horizon.csv",
                                                            {"searcher_ft", "beacon_ft",
                                                             "horizon_nm"})),
                         test::RowName());

TEST(Sensor, HorizonGivesHalfOfItAsWidth) {
  // 1.23 x 50 = 61.5 NM, times 0.5.
  const SweepWidth found = horizon_sweep_width({Length::feet(2500), Length()});
  EXPECT_NEAR(found.width.nautical_miles(), 30.75, 0.13);
  EXPECT_THAT(format_working(found.working), HasSubstr("heights of 2500 ft and 0 ft"));
}

TEST(Sensor, RefusesWhatIsNoRange) {
  EXPECT_THROW(electronic_sweep_width(Length(), RangeKind::average), Error);
  EXPECT_THROW(ground_team_sweep_width(Length::metres(-1), Contrast::any), Error);
  EXPECT_THROW(ground_team_sweep_width(Length::metres(std::nan("")), Contrast::any), Error);
  EXPECT_THROW(radio_horizon({Length(), Length()}), Error);
  EXPECT_THROW(radio_horizon({Length::feet(-1), Length::feet(100)}), Error);
  EXPECT_THROW(radio_horizon({Length::metres(std::nan("")), Length()}), Error);
  EXPECT_THROW(parse_range_kind("mean"), Error);
  EXPECT_THROW(parse_contrast("good"), Error);
}

}  // namespace
}  // namespace sweepwright::sweep
