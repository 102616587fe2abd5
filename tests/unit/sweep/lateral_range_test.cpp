#include "sweepwright/sweep/lateral_range.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::sweep {
namespace {

using testing::HasSubstr;

LateralRangePoint point(double metres, double probability) {
  return {Length::metres(metres), Probability(probability)};
}

LateralRangeCurve curve(const std::vector<LateralRangePoint>& points, Sides sides) {
  return LateralRangeCurve(points, sides);
}

double at(const LateralRangeCurve& curve, double metres) {
  return curve.at(Length::metres(metres)).value();
}

TEST(LateralRangePromise1, GivesItsPointsBackAndLiesBetweenThem) {
  const std::vector<LateralRangePoint> points{point(-500, 0.05), point(-20, 0.8), point(0, 0.6),
                                              point(300, 0.9), point(301, 0)};
  const LateralRangeCurve found = curve(points, Sides::apart);
  for (const LateralRangePoint& each : points) {
    EXPECT_EQ(found.at(each.offset), each.probability);
  }
  for (std::size_t i = 1; i < points.size(); ++i) {
    const double middle = (points[i - 1].offset.metres() + points[i].offset.metres()) / 2;
    EXPECT_NEAR(at(found, middle),
                (points[i - 1].probability.value() + points[i].probability.value()) / 2, 1e-15);
  }
  EXPECT_EQ(at(found, -500.01), 0);
  EXPECT_EQ(at(found, 301.01), 0);
  EXPECT_EQ(at(found, std::nan("")), 0);
}

TEST(LateralRangePromise2, IsTheSameOnBothSides) {
  const LateralRangeCurve found =
      curve({point(0, 0.9), point(120, 0.5), point(300, 0.1)}, Sides::alike);
  for (double metres = 0; metres < 400; metres += 0.7) {
    EXPECT_DOUBLE_EQ(at(found, metres), at(found, -metres));
  }
  EXPECT_EQ(found.points().size(), 5u);
}

TEST(LateralRange, AreaByHand) {
  // A triangle of 400 m to each side: 400. Steps: (0.9 + 0.5) / 2 x 120 + (0.5 + 0.1) / 2 x 180,
  // twice: 276.
  EXPECT_DOUBLE_EQ(area_under(curve({point(0, 1), point(400, 0)}, Sides::alike)).metres(), 400);
  EXPECT_NEAR(
      area_under(curve({point(0, 0.9), point(120, 0.5), point(300, 0.1)}, Sides::alike)).metres(),
      276, 276 * 1e-14);
}

TEST(LateralRangePromise3, AreaOfTheInverseCubeLawIsTheSweepWidth) {
  // Trapezoids over x = W sinh(t), which reach far out where the curve falls as 1/x^2.
  const Length width = Length::nautical_miles(1.3);
  double sum = 0;
  constexpr double kStep = 0.005;
  for (double t = -30; t <= 30; t += kStep) {
    const Length x = width * std::sinh(t);
    sum += lateral_range(DetectionLaw::inverse_cube, width, x).value() * std::cosh(t) * kStep;
  }
  EXPECT_NEAR(sum, 1, 1e-9);
}

TEST(LateralRange, DefiniteRangeSeesHalfTheWidthToEachSide) {
  const Length width = Length::metres(300);
  for (const double seen : {-150.0, 0.0, 149.9, 150.0}) {
    EXPECT_EQ(lateral_range(DetectionLaw::definite_range, width, Length::metres(seen)).value(), 1);
  }
  for (const double missed : {-150.1, 151.0, 1e9}) {
    EXPECT_EQ(lateral_range(DetectionLaw::definite_range, width, Length::metres(missed)).value(),
              0);
  }
}

TEST(LateralRange, InverseCubeIsCertainOnTheTrackAndFallsWithTheSquare) {
  const Length width = Length::metres(500);
  const auto p = [&](double metres) {
    return lateral_range(DetectionLaw::inverse_cube, width, Length::metres(metres)).value();
  };
  EXPECT_EQ(p(0), 1);
  // W = 2 sqrt(pi) x: 1 - exp(-1).
  EXPECT_NEAR(p(500 / (2 * std::sqrt(3.14159265358979323846))), 1 - std::exp(-1), 1e-15);
  EXPECT_NEAR(p(1e6) / p(2e6), 4, 1e-6);
  EXPECT_EQ(p(-70), p(70));
}

TEST(LateralRange, RandomSearchHasNone) {
  try {
    lateral_range(DetectionLaw::exponential, Length::metres(1), Length());
    ADD_FAILURE() << "no error";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::impossible);
  }
  EXPECT_THROW(lateral_range(DetectionLaw::inverse_cube, Length(), Length()), Error);
}

TEST(LateralRange, RefusesCurvesThatMakeNoSense) {
  const auto refused = [](const std::vector<LateralRangePoint>& points, Sides sides) {
    EXPECT_THROW(curve(points, sides), Error);
  };
  refused({point(0, 1)}, Sides::alike);
  refused({point(0, 1), point(0, 0.5)}, Sides::alike);
  refused({point(0, 1), point(10, 0.5), point(9, 0)}, Sides::alike);
  refused({point(5, 1), point(10, 0.5)}, Sides::alike);
  refused({point(-5, 1), point(10, 0.5)}, Sides::alike);
  refused({point(0, 0), point(10, 0)}, Sides::alike);
  refused({point(0, 1), point(1e6, 0)}, Sides::alike);
  refused({point(0, 1), point(std::nan(""), 0)}, Sides::alike);
  refused({point(0, 1), point(std::numeric_limits<double>::infinity(), 0)}, Sides::apart);
  refused(std::vector<LateralRangePoint>(kMostLateralRangePoints + 1, point(0, 1)), Sides::apart);
}

const std::string kHead =
    "# kind: lateral range\n# title: Invented trials\n# section: run 3\n# status: own work\n"
    "# units: metres\n";

TEST(LateralRangeFile, ReadsACurve) {
  const LateralRangeTable table = parse_lateral_range(
      kHead + "# sides: apart\ndistance_ft,probability\n-100,0.5\n0,1\n200,0\n", "own.csv");
  EXPECT_EQ(citation(table.info), "Invented trials, run 3");
  EXPECT_NEAR(area_under(table.curve).feet(), 75 + 100, 1e-12);
  EXPECT_EQ(table.curve.points().front(),
            (LateralRangePoint{Length::feet(-100), Probability(0.5)}));
}

TEST(LateralRangeFile, WidthCarriesItsWorkingAndWhatTheCurveLeavesOut) {
  const LateralRangeTable table = parse_lateral_range(
      kHead + "# sides: alike\ndistance_m,probability\n0,1\n926,0.5\n", "own.csv");
  const SweepWidth found = measured_sweep_width(table);
  EXPECT_NEAR(found.width.nautical_miles(), 0.75, 1e-12);  // 2 x (1 + 0.5) / 2 x 0.5 NM
  EXPECT_THAT(format_working(found.working),
              HasSubstr("= 0.75 NM  [1]\n[1] Invented trials, run 3"));
  ASSERT_EQ(found.cautions.size(), 2u);
  EXPECT_EQ(found.cautions[1],
            "The lateral range curve ends at a probability of 0.5: taken as 0 beyond");
}

struct BadFile {
  const char* name;
  std::string text;
  const char* message;
};

class BadLateralRange : public testing::TestWithParam<BadFile> {};

TEST_P(BadLateralRange, IsRefusedWithItsPlace) {
  try {
    parse_lateral_range(GetParam().text, "own.csv");
    ADD_FAILURE() << "no error";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::input);
    EXPECT_THAT(error.what(), HasSubstr(GetParam().message));
  }
}

const std::string kAlike = "# sides: alike\n";
const std::string kColumns = "distance_m,probability\n";
INSTANTIATE_TEST_SUITE_P(
    All, BadLateralRange,
    testing::Values(
        BadFile{"Empty", "", "no line of column names"},
        BadFile{"OtherKind",
                "# kind: sweep width\n" + kHead.substr(kHead.find("# title")) + kAlike + kColumns +
                    "0,1\n1,0\n",
                "own.csv:1: found a table of kind 'sweep width', expected 'lateral range'"},
        BadFile{"NoSides", kHead + kColumns + "0,1\n1,0\n", "the table has no 'sides'"},
        BadFile{"Sides", kHead + "# sides: both\n" + kColumns + "0,1\n1,0\n",
                "own.csv:6: 'both' is not a way to give the two sides"},
        BadFile{"NoUnit", kHead + kAlike + "distance,probability\n0,1\n1,0\n",
                "own.csv:7: the first column is 'distance'"},
        BadFile{"Percent", kHead + kAlike + kColumns + "0,90\n1,0\n",
                "own.csv:8: the probability is 90, expected 0 to 1"},
        BadFile{"NotRising", kHead + kAlike + kColumns + "0,1\n5,1\n5,0\n",
                "do not rise at point 3"},
        BadFile{"NoNumber", kHead + kAlike + kColumns + "0,1\nfar,0\n", "own.csv:9: 'far'"}),
    [](const auto& bad) { return std::string(bad.param.name); });

}  // namespace
}  // namespace sweepwright::sweep
