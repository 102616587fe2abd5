#include "sweepwright/sweep/sector_search.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

constexpr DetectionLaw kLaws[] = {DetectionLaw::inverse_cube, DetectionLaw::exponential,
                                  DetectionLaw::definite_range};

SectorSearch sectors(double radius_nm, int lines) {
  return {Length::nautical_miles(radius_nm), lines};
}

double pod(DetectionLaw law, double width_nm, const SectorSearch& search) {
  return sector_search_probability(law, Length::nautical_miles(width_nm), search).value();
}

class SectorRow : public testing::TestWithParam<test::CheckRow> {};

TEST_P(SectorRow, AgreesWithScipy) {
  const double width = GetParam().number("width_over_radius");
  const SectorSearch search = sectors(1, static_cast<int>(GetParam().number("lines")));
  EXPECT_NEAR(pod(DetectionLaw::inverse_cube, width, search), GetParam().number("pod_inverse_cube"),
              1e-9);
  EXPECT_NEAR(pod(DetectionLaw::exponential, width, search), GetParam().number("pod_exponential"),
              2e-12);
  EXPECT_NEAR(pod(DetectionLaw::definite_range, width, search),
              GetParam().number("pod_definite_range"), 2e-12);
}

INSTANTIATE_TEST_SUITE_P(Scipy, SectorRow,
                         testing::ValuesIn(test::check_rows("sweep/sector_search.csv",
                                                            {"width_over_radius", "lines",
                                                             "pod_inverse_cube", "pod_exponential",
                                                             "pod_definite_range"})),
                         test::RowName());

TEST(SectorSearch, SpacingOfSixSectorsIsTheRadius) {
  // Joint Pub 3-50 Volume I, 552.F (seen): the cross leg, here as long as the legs, is the greatest
  // track spacing. Half way along it is half of that.
  EXPECT_NEAR(greatest_track_spacing(sectors(5, 3)).nautical_miles(), 5, 1e-14);
  EXPECT_NEAR(mid_leg_track_spacing(sectors(5, 3)).nautical_miles(), 2.5, 1e-14);
  // Four sectors: the diagonal of a square.
  EXPECT_NEAR(greatest_track_spacing(sectors(5, 2)).nautical_miles(), 5 * std::sqrt(2), 1e-13);
}

TEST(SectorSearch, MidLegRuleIsTheLawAtThatSpacing) {
  const Length width = Length::nautical_miles(1);
  for (const DetectionLaw law : kLaws) {
    EXPECT_NEAR(mid_leg_probability(law, width, sectors(2, 3)).value(),
                probability_of_detection(law, Coverage(1)).value(), 1e-15);
  }
}

TEST(SectorSearchPromise1, RisesWithWidthAndLinesAndFallsWithRadius) {
  for (const DetectionLaw law : kLaws) {
    for (double width = 0.05; width < 4; width *= 1.1) {
      const double here = pod(law, width, sectors(5, 3));
      EXPECT_GT(pod(law, width * 1.1, sectors(5, 3)), here);
      EXPECT_GT(pod(law, width, sectors(5, 6)), here);
      EXPECT_LT(pod(law, width, sectors(6, 3)), here);
    }
  }
}

TEST(SectorSearchPromise2, LawsKeepTheirOrder) {
  for (double width = 1e-6; width < 1e6; width *= 1.3) {
    const SectorSearch search = sectors(5, 3);
    const double cube = pod(DetectionLaw::inverse_cube, width, search);
    EXPECT_GE(pod(DetectionLaw::definite_range, width, search), cube - 1e-15);
    EXPECT_GE(cube, pod(DetectionLaw::exponential, width, search) - 1e-15);
  }
}

TEST(SectorSearch, SectorsAreTwiceTheLines) {
  EXPECT_EQ(parse_sectors("6"), 3);
  EXPECT_EQ(parse_sectors("4"), 2);
  EXPECT_EQ(parse_sectors("12"), 6);
  for (const char* bad : {"5", "0", "74", "six", ""}) EXPECT_THROW(parse_sectors(bad), Error);
}

TEST(SectorSearch, RefusesWhatIsNoSectorSearch) {
  const Length width = Length::nautical_miles(1);
  EXPECT_THROW(sector_search_probability(DetectionLaw::exponential, width, {Length(), 3}), Error);
  EXPECT_THROW(sector_search_probability(DetectionLaw::exponential, Length(), sectors(5, 3)),
               Error);
  for (const int lines : {-1, 0, kMostSectorLines + 1}) {
    EXPECT_THROW(greatest_track_spacing(sectors(5, lines)), Error);
  }
}

}  // namespace
}  // namespace sweepwright::sweep
