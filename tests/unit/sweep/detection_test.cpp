#include "sweepwright/sweep/detection.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

constexpr DetectionLaw kLaws[] = {DetectionLaw::inverse_cube, DetectionLaw::exponential,
                                  DetectionLaw::definite_range};
constexpr double kHalfRootPi = 0.886226925452758013649;  // sqrt(pi)/2, to 21 digits

double pod(DetectionLaw law, double coverage) {
  return probability_of_detection(law, Coverage(coverage)).value();
}

/// Probabilities from 1e-300 to the double next to 1.
std::vector<double> probabilities_below_one() {
  std::vector<double> result{0};
  for (int exponent = -300; exponent < 0; exponent += 3) result.push_back(std::pow(10, exponent));
  for (int i = 1; i < 1000; ++i) result.push_back(i / 1000.0);
  for (int power = 4; power <= 53; ++power) result.push_back(1 - std::ldexp(1, -power));
  return result;
}

class PodTable : public testing::TestWithParam<test::CheckRow> {};

TEST_P(PodTable, GivesThePrintedProbabilities) {
  constexpr double kPrinted = 5.1e-7;  // six decimals
  const double coverage = GetParam().number("coverage_factor");
  EXPECT_NEAR(pod(DetectionLaw::inverse_cube, coverage),
              GetParam().number("pod_inverse_cube_parallel"), kPrinted);
  EXPECT_NEAR(pod(DetectionLaw::exponential, coverage), GetParam().number("pod_random_exponential"),
              kPrinted);
  EXPECT_NEAR(pod(DetectionLaw::definite_range, coverage), GetParam().number("pod_definite_range"),
              kPrinted);
}

TEST_P(PodTable, ReadBackGivesTheCoverage) {
  const double coverage = GetParam().number("coverage_factor");
  const auto read_back = [](DetectionLaw law, const char* column) {
    return coverage_for(law, Probability(GetParam().number(column))).value();
  };
  // Half a unit of the sixth decimal, magnified by 1/slope of the law; 1.1 for its bend.
  constexpr double kPrinted = 1.1 * 5e-7;
  EXPECT_NEAR(read_back(DetectionLaw::exponential, "pod_random_exponential"), coverage,
              kPrinted * std::exp(coverage));
  EXPECT_NEAR(read_back(DetectionLaw::inverse_cube, "pod_inverse_cube_parallel"), coverage,
              kPrinted * std::exp(kHalfRootPi * kHalfRootPi * coverage * coverage));
}

INSTANTIATE_TEST_SUITE_P(
    Reference, PodTable,
    testing::ValuesIn(test::check_rows("sweep/pod_vs_coverage.csv",
                                       {"coverage_factor", "pod_inverse_cube_parallel",
                                        "pod_random_exponential", "pod_definite_range"})),
    test::RowName());

TEST(Detection, AgreesWithExtendedPrecision) {
  // The same formulas in long double, by the C library's own erfl and expm1l.
  constexpr long double kLongHalfRootPi = 0.886226925452758013649L;
  for (int i = 0; i <= 100000; ++i) {
    const double coverage = i / 10000.0;
    const long double c = coverage;
    EXPECT_NEAR(pod(DetectionLaw::inverse_cube, coverage),
                static_cast<double>(std::erf(kLongHalfRootPi * c)), 2e-16);
    EXPECT_NEAR(pod(DetectionLaw::exponential, coverage), static_cast<double>(-std::expm1(-c)),
                2e-16);
  }
}

TEST(DetectionPromise1, ProbabilityRisesWithCoverageFromZero) {
  for (const DetectionLaw law : kLaws) {
    EXPECT_EQ(pod(law, 0), 0);
    double before = 0;
    for (int i = 1; i <= 5000; ++i) {
      const double now = pod(law, i / 1000.0);
      if (law == DetectionLaw::definite_range && i > 1000) {
        EXPECT_EQ(now, 1);
      } else {
        EXPECT_GT(now, before) << name(law) << " at coverage " << i / 1000.0;
      }
      before = now;
    }
  }
}

TEST(DetectionPromise2, LawsKeepTheirOrder) {
  for (int i = 0; i <= 10000; ++i) {
    const double coverage = i / 1000.0;
    EXPECT_GE(pod(DetectionLaw::definite_range, coverage),
              pod(DetectionLaw::inverse_cube, coverage));
    EXPECT_GE(pod(DetectionLaw::inverse_cube, coverage), pod(DetectionLaw::exponential, coverage));
  }
}

TEST(DetectionPromise3, CoverageForGivesBackTheProbability) {
  for (const DetectionLaw law : kLaws) {
    for (const double p : probabilities_below_one()) {
      const double coverage = coverage_for(law, Probability(p)).value();
      EXPECT_NEAR(pod(law, coverage), p, 4e-16) << name(law);
      // The chance to miss, computed apart so that it keeps its digits near 1.
      const double missed = law == DetectionLaw::inverse_cube  ? std::erfc(kHalfRootPi * coverage)
                            : law == DetectionLaw::exponential ? std::exp(-coverage)
                                                               : 1 - coverage;
      EXPECT_NEAR(missed / (1 - p), 1, 1e-14) << name(law) << " for " << p;
    }
  }
}

TEST(DetectionPromise3, ProbabilityGivesBackTheCoverage) {
  for (const DetectionLaw law : kLaws) {
    const double most = law == DetectionLaw::definite_range ? 1 : 3;
    for (double coverage = 0.001; coverage <= most; coverage += 0.001) {
      const Probability p = probability_of_detection(law, Coverage(coverage));
      // A flat curve magnifies the rounding of p: by 1/slope, at most exp(0.785 x 9) = 1172 here.
      EXPECT_NEAR(coverage_for(law, p).value(), coverage, 1172 * 4e-16) << name(law);
    }
  }
}

TEST(Detection, InverseCubeAgreesWithBoost) {
  // Boost.Math's erf_inv and erfc_inv are independent of our iteration.
  for (const double p : probabilities_below_one()) {
    if (p == 0) continue;
    const double u = p < 0.5 ? boost::math::erf_inv(p) : boost::math::erfc_inv(1 - p);
    const double ours = coverage_for(DetectionLaw::inverse_cube, Probability(p)).value();
    EXPECT_NEAR(ours / (u / kHalfRootPi), 1, 1e-14) << p;
  }
}

TEST(Detection, CertaintyNeedsNoFiniteCoverage) {
  for (const DetectionLaw law : {DetectionLaw::inverse_cube, DetectionLaw::exponential}) {
    try {
      coverage_for(law, Probability(1));
      ADD_FAILURE() << "no error for " << name(law);
    } catch (const Error& error) {
      EXPECT_EQ(error.code(), ErrorCode::impossible);
    }
  }
  EXPECT_EQ(coverage_for(DetectionLaw::definite_range, Probability(1)).value(), 1);
}

TEST(Detection, RefusesNumbersThatAreNone) {
  for (const double bad : {-0.1, std::nan(""), std::numeric_limits<double>::infinity()}) {
    EXPECT_THROW(Coverage{bad}, Error);
    EXPECT_THROW(Probability{bad}, Error);
  }
  EXPECT_THROW(Probability{1.1}, Error);
  EXPECT_EQ(Coverage(2.5).value(), 2.5);
}

TEST(DetectionPromise4, CoverageUndoesTrackSpacing) {
  for (double width = 0.05; width < 20; width *= 1.3) {
    for (double wanted = 0.1; wanted < 5; wanted *= 1.2) {
      const Length w = Length::nautical_miles(width);
      const Length spacing = track_spacing(w, Coverage(wanted));
      EXPECT_NEAR(coverage(w, spacing).value() / wanted, 1, 1e-15);
    }
  }
}

TEST(Detection, RefusesWidthsAndSpacingsOfZero) {
  const Length mile = Length::nautical_miles(1);
  EXPECT_THROW(coverage(mile, Length()), Error);
  EXPECT_THROW(coverage(Length(), mile), Error);
  EXPECT_THROW(coverage(-mile, mile), Error);
  EXPECT_THROW(coverage(mile, Length::metres(std::nan(""))), Error);
  EXPECT_THROW(track_spacing(mile, Coverage()), Error);
  EXPECT_THROW(track_spacing(Length(), Coverage(1)), Error);
}

TEST(Detection, LawsReadBackFromTheirNames) {
  ASSERT_EQ(detection_law_names().size(), std::size(kLaws));
  for (const DetectionLaw law : kLaws) EXPECT_EQ(parse_detection_law(name(law)), law);
  EXPECT_EQ(parse_detection_law("Inverse_Cube"), DetectionLaw::inverse_cube);
  try {
    parse_detection_law("inverse-cub");
    ADD_FAILURE() << "no error";
  } catch (const Error& error) {
    EXPECT_EQ(error.hint(), "did you mean 'inverse-cube'?");
  }
}

class CumulativePod : public testing::TestWithParam<test::CheckRow> {};

TEST_P(CumulativePod, GivesTheHandValue) {
  const auto searches = static_cast<std::size_t>(GetParam().number("searches"));
  const std::vector<Probability> each(searches, Probability(GetParam().number("single")));
  EXPECT_NEAR(cumulative_probability_of_detection(each).value(), GetParam().number("cumulative"),
              1e-15);
}

INSTANTIATE_TEST_SUITE_P(Reference, CumulativePod,
                         testing::ValuesIn(test::check_rows("sweep/cumulative_pod.csv",
                                                            {"single", "searches", "cumulative"})),
                         test::RowName());

class CumulativePodChart : public testing::TestWithParam<test::CheckRow> {};

TEST_P(CumulativePodChart, GivesLessThanIndependence) {
  const auto searches = static_cast<std::size_t>(GetParam().number("searches"));
  const std::vector<Probability> each(searches, Probability(GetParam().number("single")));
  const double independent = cumulative_probability_of_detection(each).value();
  EXPECT_NEAR(independent, GetParam().number("independent"), 1e-15);
  EXPECT_LT(GetParam().number("chart"), independent);
}

INSTANTIATE_TEST_SUITE_P(Reference, CumulativePodChart,
                         testing::ValuesIn(test::check_rows("sweep/cumulative_pod_chart.csv",
                                                            {"single", "searches", "chart",
                                                             "independent"})),
                         test::RowName());

class InlandPod : public testing::TestWithParam<test::CheckRow> {};

/// A published table of probability against spacing: one sweep width explains each of its rows
/// under the exponential law, to the table's rounding. It names no width, so any that fits will do.
TEST_P(InlandPod, FollowsTheExponentialLawWithOneSweepWidth) {
  constexpr double kRounding = 0.025;
  Length least;
  Length most = Length::nautical_miles(100);
  for (const auto& [column, spacing_nm] :
       {std::pair{"pod_at_0_5nm", 0.5}, std::pair{"pod_at_1nm", 1.0},
        std::pair{"pod_at_1_5nm", 1.5}, std::pair{"pod_at_2nm", 2.0}}) {
    const Length spacing = Length::nautical_miles(spacing_nm);
    const double printed = GetParam().number(column) / 100;
    const auto width_for = [&](double p) {
      return coverage_for(DetectionLaw::exponential, Probability(p)).value() * spacing;
    };
    least = std::max(least, width_for(printed - kRounding));
    most = std::min(most, width_for(printed + kRounding));
  }
  EXPECT_LE(least, most);
}

INSTANTIATE_TEST_SUITE_P(Reference, InlandPod,
                         testing::ValuesIn(test::check_rows("sweep/inland_pod.csv",
                                                            {"height_ft", "visibility_miles",
                                                             "pod_at_0_5nm", "pod_at_1nm",
                                                             "pod_at_1_5nm", "pod_at_2nm"})),
                         test::RowName());

TEST(Detection, NoSearchFindsNothing) {
  EXPECT_EQ(cumulative_probability_of_detection({}).value(), 0);
}

}  // namespace
}  // namespace sweepwright::sweep
