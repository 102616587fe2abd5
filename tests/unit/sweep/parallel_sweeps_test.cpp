#include "sweepwright/sweep/parallel_sweeps.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::sweep {
namespace {

/// `0:1;400:0`
LateralRangeCurve curve_of(const test::CheckRow& row) {
  std::vector<LateralRangePoint> points;
  std::istringstream text(row.text("points_m"));
  for (std::string point; std::getline(text, point, ';');) {
    const std::size_t colon = point.find(':');
    points.push_back({Length::metres(parse_number(point.substr(0, colon), "the distance")),
                      Probability(parse_number(point.substr(colon + 1), "the probability"))});
  }
  return LateralRangeCurve(points, parse_sides(row.text("sides")));
}

LateralRangeCurve alike(std::vector<LateralRangePoint> points) {
  return LateralRangeCurve(points, Sides::alike);
}

double pod(const LateralRangeCurve& curve, double spacing_m) {
  return parallel_sweeps_probability(curve, Length::metres(spacing_m)).value();
}

class LateralRangeRow : public testing::TestWithParam<test::CheckRow> {};

TEST_P(LateralRangeRow, AgreesWithScipy) {
  const LateralRangeCurve curve = curve_of(GetParam());
  EXPECT_NEAR(area_under(curve).metres(), GetParam().number("width_m"), 1e-9);
  EXPECT_NEAR(pod(curve, GetParam().number("spacing_m")), GetParam().number("pod"), 1e-9);
}

TEST_P(LateralRangeRow, NeverFindsMoreThanTheCoverage) {
  const LateralRangeCurve curve = curve_of(GetParam());
  const double spacing = GetParam().number("spacing_m");
  const double coverage = area_under(curve).metres() / spacing;
  EXPECT_LE(pod(curve, spacing), coverage * (1 + 1e-12));
}

TEST_P(LateralRangeRow, WidestSpacingFindsTheProbabilityOfThatSpacing) {
  const LateralRangeCurve curve = curve_of(GetParam());
  const Probability found(pod(curve, GetParam().number("spacing_m")));
  // Beyond a coverage of 10 there is no reverse.
  if (area_under(curve).metres() / GetParam().number("spacing_m") > 9) return;
  const Length spacing = widest_spacing(curve, found);
  EXPECT_NEAR(pod(curve, spacing.metres()), found.value(), 1e-9);
  EXPECT_GE(spacing.metres(), GetParam().number("spacing_m") * (1 - 1e-6));
}

INSTANTIATE_TEST_SUITE_P(Scipy, LateralRangeRow,
                         testing::ValuesIn(test::check_rows("sweep/lateral_range.csv",
                                                            {"curve", "sides", "points_m",
                                                             "spacing_m", "width_m", "pod"})),
                         test::RowName());

TEST(ParallelSweepsPromise1, WithoutOverlapTheProbabilityIsTheCoverage) {
  const LateralRangeCurve cone =
      alike({{Length(), Probability(0.8)}, {Length::metres(300), Probability(0.1)}});
  const double width = area_under(cone).metres();
  for (const double spacing : {600.0, 700.0, 5000.0}) {
    EXPECT_NEAR(pod(cone, spacing), width / spacing, 1e-12);
  }
}

TEST(ParallelSweeps, OverlapByHand) {
  // A crew that sees half of all within 300 m, legs 300 m apart: every place lies within reach of
  // two legs, 1 - 0.5 x 0.5.
  const LateralRangeCurve half =
      alike({{Length(), Probability(0.5)}, {Length::metres(300), Probability(0.5)}});
  EXPECT_NEAR(pod(half, 300), 0.75, 1e-12);
  // 400 m apart: within 100 m of a leg one leg reaches, elsewhere two; half of the ground each.
  EXPECT_NEAR(pod(half, 400), (0.5 + 0.75) / 2, 1e-12);
}

TEST(ParallelSweeps, OneSidedCrewLeavesEveryOtherGap) {
  // It sees all within 400 m to the right. At 400 m legs there and back look into the same gap.
  const std::vector<LateralRangePoint> points{{Length(), Probability(1)},
                                              {Length::metres(400), Probability(1)}};
  const LateralRangeCurve right(points, Sides::apart);
  EXPECT_NEAR(pod(right, 400), 0.5, 1e-12);
  EXPECT_NEAR(pod(right, 800), 0.5, 1e-12);
}

TEST(ParallelSweeps, ManyPointsOfTheInverseCubeCurveGiveItsLaw) {
  // The curve of the law, cut off at 20 widths: a share of 1 / (40 pi) of its area is lost there.
  const Length width = Length::metres(100);
  std::vector<LateralRangePoint> points;
  for (int i = 0; i < 200; ++i) {
    const Length x = width * (0.002 * i * std::exp(i * std::log(20 / 0.398) / 199));
    points.push_back({x, lateral_range(DetectionLaw::inverse_cube, width, x)});
  }
  const LateralRangeCurve curve = alike(points);
  for (const double coverage : {0.5, 1.0, 1.5}) {
    EXPECT_NEAR(pod(curve, 100 / coverage), std::erf(std::sqrt(std::atan(1)) * coverage), 3e-3);
  }
}

class InverseCubeRow : public testing::TestWithParam<test::CheckRow> {};

TEST_P(InverseCubeRow, SumOfLegsIsTheErrorFunction) {
  const double coverage = GetParam().number("coverage");
  EXPECT_NEAR(probability_of_detection(DetectionLaw::inverse_cube, Coverage(coverage)).value(),
              GetParam().number("pod"), 1e-9);
  EXPECT_NEAR(GetParam().number("width_over_w"), 1, 1e-11);
}

INSTANTIATE_TEST_SUITE_P(Scipy, InverseCubeRow,
                         testing::ValuesIn(test::check_rows("sweep/inverse_cube_quadrature.csv",
                                                            {"coverage", "width_over_w", "pod"})),
                         test::RowName());

TEST(ParallelSweeps, RefusesWhatCannotBe) {
  const LateralRangeCurve curve =
      alike({{Length(), Probability(0.5)}, {Length::metres(300), Probability(0)}});
  EXPECT_THROW(parallel_sweeps_probability(curve, Length()), Error);
  EXPECT_THROW(parallel_sweeps_probability(curve, Length::metres(5)), Error);
  EXPECT_THROW(widest_spacing(curve, Probability()), Error);
  // A crew that hardly sees anything, however far it looks.
  const LateralRangeCurve dim =
      alike({{Length(), Probability(0.001)}, {Length::nautical_miles(90), Probability(0.001)}});
  for (const LateralRangeCurve& hopeless : {curve, dim}) {
    try {
      widest_spacing(hopeless, Probability(1));
      ADD_FAILURE() << "no error";
    } catch (const Error& error) {
      EXPECT_EQ(error.code(), ErrorCode::impossible);
    }
  }
}

}  // namespace
}  // namespace sweepwright::sweep
