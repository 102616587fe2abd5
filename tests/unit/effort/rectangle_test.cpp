#include "sweepwright/effort/rectangle.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <sstream>

#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::effort {
namespace {

using sweep::DetectionLaw;
using testing::HasSubstr;

Length miles(double v) {
  return Length::nautical_miles(v);
}

Datum datum_at(Length place, Length error) {
  return {place, place, error};
}

RectangleSearch best(std::vector<Datum> datums, double effort_nm2,
                     DetectionLaw law = DetectionLaw::exponential) {
  return best_rectangle(datums, Area::square_nautical_miles(effort_nm2), law);
}

class OptimalSquare : public testing::TestWithParam<test::CheckRow> {};

// The table has two decimals of half sides and coverages, three of probabilities. Its half sides
// were stepped through by 0.01; the optimum is flat, so they are the table's least certain figure.
TEST_P(OptimalSquare, is_that_of_the_table) {
  const test::CheckRow& row = GetParam();
  const Length error = miles(4);
  for (const auto& [law, name] : {std::pair{DetectionLaw::inverse_cube, "inverse_cube_"},
                                  std::pair{DetectionLaw::exponential, "exponential_"}}) {
    const RectangleSearch found =
        best_rectangle(std::vector{datum_at(miles(10), error)},
                       error * error * row.number("effort_over_error_squared"), law);
    const std::string prefix = name;
    EXPECT_NEAR(found.rectangle.half_width / error, row.number(prefix + "half_side_over_error"),
                0.0101);
    EXPECT_NEAR(found.pos.value(), row.number(prefix + "pos"), 0.00051);
    EXPECT_NEAR(found.coverage.value(), row.number(prefix + "coverage"), 0.0251);
    // P1: a square about the datum.
    EXPECT_NEAR(found.rectangle.length() / found.rectangle.width(), 1, 1e-4);
    EXPECT_NEAR((found.rectangle.low + found.rectangle.high).nautical_miles() / 2, 10, 1e-4);
  }
}

INSTANTIATE_TEST_SUITE_P(
    Derived, OptimalSquare,
    testing::ValuesIn(test::check_rows("effort/optimal_square.csv",
                                       {"effort_over_error_squared",
                                        "inverse_cube_half_side_over_error", "inverse_cube_pos",
                                        "inverse_cube_coverage", "exponential_half_side_over_error",
                                        "exponential_pos", "exponential_coverage"})),
    test::RowName());

std::vector<double> numbers(const std::string& text) {
  std::istringstream in(text);
  return {std::istream_iterator<double>(in), {}};
}

class BestRectangle : public testing::TestWithParam<test::CheckRow> {};

TEST_P(BestRectangle, is_that_of_scipy) {
  const test::CheckRow& row = GetParam();
  const std::vector<double> from = numbers(row.text("from_nm"));
  const std::vector<double> to = numbers(row.text("to_nm"));
  const std::vector<double> error = numbers(row.text("error_nm"));
  const std::vector<double> weight = numbers(row.text("weight"));
  std::vector<Datum> datums;
  for (std::size_t i = 0; i < from.size(); ++i) {
    datums.push_back({miles(from[i]), miles(to[i]), miles(error[i]), weight[i]});
  }
  const DetectionLaw law = sweep::parse_detection_law(row.text("law"));
  const Rectangle theirs{miles(row.number("low_nm")), miles(row.number("high_nm")),
                         miles(row.number("half_width_nm"))};
  EXPECT_NEAR(containment(theirs, datums).value(), row.number("poc"), 1e-5);  // rounded sides
  const RectangleSearch found = best(datums, row.number("effort_nm2"), law);
  EXPECT_NEAR(found.pos.value(), row.number("pos"), 1e-8);
  const double size = theirs.length().nautical_miles();
  EXPECT_NEAR((found.rectangle.low - theirs.low).nautical_miles(), 0, 1e-3 * size);
  EXPECT_NEAR((found.rectangle.high - theirs.high).nautical_miles(), 0, 1e-3 * size);
  EXPECT_NEAR((found.rectangle.half_width - theirs.half_width).nautical_miles(), 0, 1e-3 * size);
}

INSTANTIATE_TEST_SUITE_P(Scipy, BestRectangle,
                         testing::ValuesIn(test::check_rows(
                             "effort/rectangle_scipy.csv",
                             {"from_nm", "to_nm", "error_nm", "weight", "effort_nm2", "law",
                              "low_nm", "high_nm", "half_width_nm", "poc", "pos"})),
                         test::RowName());

// Half of a circular normal lies within E; the square about that circle holds erf(sqrt(ln 2))^2 of
// it, the normal being two independent normals.
TEST(Containment, of_the_square_about_the_50_percent_circle) {
  const std::vector<Datum> datums{datum_at(Length(), miles(5))};
  const double inside = containment({miles(-5), miles(5), miles(5)}, datums).value();
  EXPECT_NEAR(inside, std::pow(std::erf(std::sqrt(std::log(2.0))), 2), 1e-15);
  EXPECT_NEAR(containment({miles(-99), miles(99), miles(99)}, datums).value(), 1, 1e-15);
  EXPECT_EQ(containment({miles(5), miles(5), miles(5)}, datums).value(), 0);
}

// A stretch of datum line is many datums side by side.
TEST(Containment, of_a_line_is_the_mean_over_its_places) {
  const Rectangle rectangle{miles(-3), miles(12), miles(4)};
  std::vector<Datum> places;
  constexpr int kPlaces = 20000;
  for (int i = 0; i < kPlaces; ++i) {
    places.push_back(datum_at(miles(20 * (i + 0.5) / kPlaces), miles(5)));
  }
  const std::vector<Datum> line{{miles(0), miles(20), miles(5)}};
  EXPECT_NEAR(containment(rectangle, line).value(), containment(rectangle, places).value(), 1e-9);
  // A very short line is a place: no digits are lost.
  const std::vector<Datum> shortest{{miles(0), miles(1e-3), miles(5)}};
  const std::vector<Datum> place{datum_at(miles(5e-4), miles(5))};
  EXPECT_NEAR(containment(rectangle, shortest).value(), containment(rectangle, place).value(),
              1e-9);
}

RC_GTEST_PROP(BestRectangle, P2_more_effort_never_gives_less, ()) {
  const std::vector<Datum> datums{{Length(), miles(*rc::gen::inRange(0, 50)), miles(5)},
                                  datum_at(miles(*rc::gen::inRange(-40, 40)), miles(8))};
  const int less = *rc::gen::inRange(1, 1000);
  const int more = less + *rc::gen::inRange(1, 1000);
  RC_ASSERT(best(datums, less).pos.value() <= best(datums, more).pos.value() + 1e-9);
}

RC_GTEST_PROP(BestRectangle, is_not_beaten_by_another_about_the_same_place, ()) {
  const DetectionLaw law = *rc::gen::element(DetectionLaw::exponential, DetectionLaw::inverse_cube,
                                             DetectionLaw::definite_range);
  const std::vector<Datum> datums{{Length(), miles(*rc::gen::inRange(0, 50)), miles(5)}};
  const RectangleSearch found = best(datums, *rc::gen::inRange(1, 1000), law);
  Rectangle other = found.rectangle;
  const auto factor = [] { return *rc::gen::inRange(50, 200) / 100.0; };
  other.low = other.low * factor();
  other.high = std::max(other.high * factor(), other.low);
  other.half_width = other.half_width * factor();
  RC_PRE(other.area() > Area());
  RC_ASSERT(search_rectangle(other, datums, found.effort, law).pos.value() <=
            found.pos.value() + 1e-9);
}

TEST(BestRectangle, P3_two_datums_apart_get_a_rectangle_each) {
  const Area effort = Area::square_nautical_miles(200);
  const Datum here = datum_at(Length(), miles(5));
  const std::vector<RectangleSearch> close =
      best_rectangles(here, datum_at(miles(4), miles(5)), effort, DetectionLaw::exponential);
  EXPECT_EQ(close.size(), 1U);

  const std::vector<RectangleSearch> apart =
      best_rectangles(here, datum_at(miles(60), miles(5)), effort, DetectionLaw::exponential);
  ASSERT_EQ(apart.size(), 2U);
  // By symmetry: each is half of a search for one datum with half the effort.
  const RectangleSearch half = best({here}, 100);
  for (const RectangleSearch& search : apart) {
    EXPECT_NEAR(search.pos.value(), half.pos.value() / 2, 1e-7);
    EXPECT_NEAR(search.effort.square_nautical_miles(), 100, 0.1);
    EXPECT_NEAR(search.rectangle.half_width / half.rectangle.half_width, 1, 1e-3);
  }
  EXPECT_NEAR((apart[1].rectangle.low - apart[0].rectangle.low).nautical_miles(), 60, 1e-2);
}

TEST(BestRectangle, of_two_datums_is_never_worse_than_one_rectangle) {
  for (const double apart : {0.0, 6.0, 12.0, 15.0, 20.0, 30.0}) {
    const std::vector<Datum> datums{datum_at(Length(), miles(5)), datum_at(miles(apart), miles(5))};
    double pos = 0;
    for (const RectangleSearch& search : best_rectangles(
             datums[0], datums[1], Area::square_nautical_miles(250), DetectionLaw::exponential)) {
      pos += search.pos.value();
    }
    EXPECT_GE(pos, best(datums, 250).pos.value()) << apart;
  }
}

TEST(RectangleOnTheGround, has_its_area_wherever_the_earth_is_awkward) {
  const Rectangle rectangle{miles(-10), miles(25), miles(6)};
  for (const Position& place : test::awkward_places()) {
    const Region region = to_region(rectangle, place, TrueDirection::degrees(60));
    EXPECT_NEAR(area(region) / rectangle.area(), 1, 1e-4);
    EXPECT_TRUE(contains(region, travel(place, TrueDirection::degrees(60), miles(24)).position));
    EXPECT_FALSE(contains(region, travel(place, TrueDirection::degrees(60), miles(-11)).position));
  }
}

template <typename Call>
std::string fault(Call call) {
  try {
    call();
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::value);
    return error.what();
  }
  return "no error";
}

TEST(RectangleErrors, say_what_was_expected) {
  EXPECT_THAT(fault([] { best({}, 1); }), HasSubstr("no datum"));
  EXPECT_THAT(fault([] { best({datum_at(Length(), Length())}, 1); }), HasSubstr("error is 0 m"));
  EXPECT_THAT(fault([] { best({datum_at(Length(), miles(1))}, 0); }), HasSubstr("search effort"));
  EXPECT_THAT(fault([] { best({{miles(2), miles(1), miles(1)}}, 1); }), HasSubstr("low end first"));
  EXPECT_THAT(fault([] {
                best({{miles(1), miles(1), miles(1), 0}}, 1);
              }),
              HasSubstr("add up to 0"));
  EXPECT_THAT(fault([] {
                best({{miles(1), miles(1), miles(1), -1}}, 1);
              }),
              HasSubstr("weight of a datum is -1"));
  EXPECT_THAT(
      fault([] {
        containment({miles(1), miles(0), miles(1)}, std::vector{datum_at(Length(), miles(1))});
      }),
      HasSubstr("low end comes first"));
}

}  // namespace
}  // namespace sweepwright::effort
