#include "sweepwright/sweep/sweep_width.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "support/files.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/sweep/search_object.hpp"

namespace sweepwright::sweep {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

Length nm(double value) {
  return Length::nautical_miles(value);
}

Request land(std::string object, double feet, double visibility_nm) {
  return {.platform = Platform::fixed_wing,
          .object = std::move(object),
          .visibility = nm(visibility_nm),
          .height = Length::feet(feet),
          .terrain = Terrain::open};
}

Request sea(std::string object, double visibility_nm) {
  return {.platform = Platform::vessel,
          .object = std::move(object),
          .visibility = nm(visibility_nm),
          .wind = Speed::knots(5),
          .sea = Length::metres(0.5)};
}

void expect_error(const Request& request, ErrorCode code, const std::string& part) {
  try {
    sweep_width(request);
    ADD_FAILURE() << "no error, expected: " << part;
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), code) << error.what();
    EXPECT_THAT(error.what(), HasSubstr(part));
  }
}

std::vector<std::string> objects_on(Surface surface) {
  std::vector<std::string> names;
  for (const SearchObject& object : search_objects()) {
    if (object.surface == surface) names.push_back(object.name);
  }
  return names;
}

double top_height(const std::string& object) {
  return object == "Person" ? 1000 : 2000;
}

// The worked example of docs/methods/sweep-width.md.
Request page_example() {
  return {.platform = Platform::fixed_wing,
          .object = "light aircraft",
          .visibility = nm(7),
          .height = Length::feet(1200),
          .wind = Speed::knots(12),
          .terrain = Terrain::hilly};
}

TEST(SweepWidth, HandExampleOverLand) {
  // Aircraft under 5700 kg. At 1000 ft: 1.5 at 5 NM and at 10 NM. At 1500 ft: 1.5 and 1.8, so
  // 1.5 + 0.3 x 2/5 = 1.62. At 1200 ft: 1.5 + 0.12 x 2/5 = 1.548. Hilly: 0.7.
  const SweepWidth found = sweep_width(page_example());
  EXPECT_NEAR(found.uncorrected.nautical_miles(), 1.548, 1e-12);
  EXPECT_NEAR(found.width.nautical_miles(), 1.0836, 1e-12);
}

TEST(SweepWidth, PageShowsTheWorkingOfTheExample) {
  const std::string page = test::read_file(test::repository() / "docs/methods/sweep-width.md");
  EXPECT_THAT(page, HasSubstr(format_working(sweep_width(page_example()).working)));
}

TEST(SweepWidth, HandExampleOverWater) {
  // Boat 7 m at 8 NM: 2.9 + (4.3 - 2.9) x 3/5 = 3.74. Wind 20 kt: 0.5. Tired crews: 0.9.
  Request request = sea("boat 7 m", 8);
  request.wind = Speed::knots(20);
  request.fatigued = true;
  const SweepWidth found = sweep_width(request);
  EXPECT_NEAR(found.uncorrected.nautical_miles(), 3.74, 1e-12);
  EXPECT_NEAR(found.width.nautical_miles(), 1.683, 1e-12);
}

TEST(SweepWidth, HandExampleWithSpeed) {
  // Helicopter at 75 kt for a person in water: 1.5 + (1.0 - 1.5) x 15/30 = 1.25.
  Request request = sea("Person in water", 8);
  request.platform = Platform::helicopter;
  request.ground_speed = Speed::knots(75);
  request.uncorrected = nm(0.1);
  request.uncorrected_source = "the planner's own manual";
  const SweepWidth found = sweep_width(request);
  EXPECT_NEAR(found.width.nautical_miles(), 0.125, 1e-12);
  EXPECT_THAT(format_working(found.working), HasSubstr("the planner's own manual"));
}

TEST(SweepWidthPromise2, LiesBetweenTheTableValuesAround) {
  constexpr double kColumns[] = {3, 5, 10, 15, 20};
  for (const std::string& object : objects_on(Surface::land)) {
    for (double low = 500; low < top_height(object); low += 500) {
      for (std::size_t i = 0; i + 1 < std::size(kColumns); ++i) {
        std::vector<double> corners;
        for (const double feet : {low, low + 500}) {
          for (const double visibility : {kColumns[i], kColumns[i + 1]}) {
            corners.push_back(
                sweep_width(land(object, feet, visibility)).uncorrected.nautical_miles());
          }
        }
        const auto [least, most] = std::minmax_element(corners.begin(), corners.end());
        for (const double part : {0.1, 0.37, 0.5, 0.93}) {
          const double inside =
              sweep_width(land(object, low + 500 * part,
                               kColumns[i] + (kColumns[i + 1] - kColumns[i]) * (1 - part)))
                  .uncorrected.nautical_miles();
          EXPECT_GE(inside, *least - 1e-12);
          EXPECT_LE(inside, *most + 1e-12);
        }
      }
    }
  }
}

TEST(SweepWidthPromise3, DoesNotFallAsVisibilityRises) {
  for (const std::string& object : objects_on(Surface::land)) {
    for (double feet = 500; feet <= top_height(object); feet += 125) {
      Length before;
      for (double visibility = 3; visibility <= 30; visibility += 0.25) {
        const Length width = sweep_width(land(object, feet, visibility)).width;
        EXPECT_GE(width, before - Length::metres(1e-9)) << object << ' ' << visibility;
        before = width;
      }
    }
  }
  for (const std::string& object : objects_on(Surface::water)) {
    Length before;
    for (double visibility = 3; visibility <= 30; visibility += 0.25) {
      const Length width = sweep_width(sea(object, visibility)).width;
      EXPECT_GE(width, before - Length::metres(1e-9)) << object << ' ' << visibility;
      before = width;
    }
  }
}

TEST(SweepWidthPromise4, WidthIsTheProductOfTheWorking) {
  std::vector<Request> requests{page_example(), land("car", 750, 4), sea("dinghy", 12)};
  for (const double knots : {10.0, 20.0, 30.0}) {
    for (const bool fatigued : {false, true}) {
      for (Request request : requests) {
        request.wind = Speed::knots(knots);
        request.fatigued = fatigued;
        const SweepWidth found = sweep_width(request);
        double product = found.uncorrected.nautical_miles();
        for (const WorkingLine& line : found.working) product *= line.factor.value_or(1);
        EXPECT_NEAR(found.width.nautical_miles() / product, 1, 1e-12);
      }
    }
  }
}

TEST(SweepWidthPromise5, SaysThatTablesAreFromMemory) {
  for (const Request& request : {page_example(), sea("PIW", 5)}) {
    const SweepWidth found = sweep_width(request);
    EXPECT_THAT(found.cautions, Contains(HasSubstr("from memory")));
    EXPECT_THAT(format_working(found.working), HasSubstr("from memory, unconfirmed"));
  }
  // Nothing from memory is used: the planner's own value, and a weather table that was read.
  Request request = sea("PIW", 5);
  request.uncorrected = nm(1);
  request.weather_table = "us-1991";
  EXPECT_THAT(sweep_width(request).cautions, IsEmpty());
}

TEST(SweepWidth, NamesTheWeatherTableInTheWorking) {
  Request request = sea("liferaft 6", 10);
  request.wind = Speed::knots(20);
  // Rafts: small objects in one manual, other objects in the next, a row of their own in the third.
  EXPECT_NEAR(sweep_width(request).width.nautical_miles(), 5.0 * 0.5, 1e-12);
  EXPECT_THAT(format_working(sweep_width(request).working), HasSubstr("in table 'iamsar'"));
  request.weather_table = "us-1991";
  EXPECT_NEAR(sweep_width(request).width.nautical_miles(), 5.0 * 0.9, 1e-12);
  EXPECT_THAT(format_working(sweep_width(request).working), HasSubstr("in table 'us-1991'"));
  request.weather_table = "iamsar-vessel";
  EXPECT_NEAR(sweep_width(request).width.nautical_miles(), 5.0 * 0.9, 1e-12);
  request.weather_table = "imsar";
  expect_error(request, ErrorCode::value, "did you mean 'iamsar'");
  request = sea("boat 7 m", 10);
  request.weather_table = "iamsar-vessel";
  expect_error(request, ErrorCode::impossible, "no row for 'Boat 7 m (23 ft)'");
}

TEST(SweepWidth, GoodVisibilityTakesTheLastColumnAndSaysSo) {
  const SweepWidth found = sweep_width(sea("PIW", 35));
  EXPECT_NEAR(found.uncorrected.nautical_miles(), 0.7, 1e-12);
  EXPECT_THAT(format_working(found.working), HasSubstr("35 NM is above the last column"));
}

TEST(SweepWidth, MetricHeightsOfTheManualsCountAsTheTables) {
  Request request = land("light aircraft", 0, 5);
  request.height = Length::metres(150);  // the manuals print 150 m for 500 ft
  EXPECT_NEAR(sweep_width(request).uncorrected.nautical_miles(), 1.4, 1e-12);
  EXPECT_THAT(format_working(sweep_width(request).working), HasSubstr("counts as the edge"));
  request = land("Person", 0, 5);
  request.height = Length::metres(305);  // 1000.7 ft; nothing is printed above 1000 ft
  EXPECT_NEAR(sweep_width(request).uncorrected.nautical_miles(), 0.4, 1e-12);
}

TEST(SweepWidth, RefusesOutsideTheTable) {
  expect_error(land("car", 480, 5), ErrorCode::impossible, "480 ft is outside the table");
  expect_error(land("car", 2100, 5), ErrorCode::impossible, "from 500 ft to 2000 ft");
  expect_error(land("Person", 1100, 5), ErrorCode::impossible,
               "prints sweep widths only from 500 ft to 1000 ft");
  expect_error(land("car", 500, 2.9), ErrorCode::impossible, "below the first column");
  expect_error(sea("PIW", 1), ErrorCode::impossible, "below the first column of the table, 3 NM");
}

TEST(SweepWidth, RefusesAircraftOverWaterWithoutATable) {
  Request request = sea("PIW", 10);
  request.height = Length::feet(500);
  for (const Platform platform : {Platform::fixed_wing, Platform::helicopter}) {
    request.platform = platform;
    expect_error(request, ErrorCode::impossible, "take the uncorrected sweep width from your own");
  }
  request = land("car", 500, 5);
  request.platform = Platform::vessel;
  expect_error(request, ErrorCode::impossible, "no sweep width table covers a vessel search");
}

TEST(SweepWidth, RefusesAboveTheLastSpeed) {
  Request request = sea("PIW", 10);
  request.uncorrected = nm(0.1);
  request.platform = Platform::helicopter;
  request.ground_speed = Speed::knots(150);
  expect_error(request, ErrorCode::impossible, "above the speed table's last, 140 kt");
}

TEST(SweepWidth, RefusesMissingAndSenselessValues) {
  Request request = land("car", 500, 5);
  request.height.reset();
  expect_error(request, ErrorCode::value, "search height is not given");
  request = land("car", 500, 5);
  request.visibility.reset();
  expect_error(request, ErrorCode::value, "visibility is not given");
  expect_error(land("car", -500, 5), ErrorCode::value, "search height cannot be used");
  expect_error(land("car", 500, 0), ErrorCode::value, "visibility cannot be used");
  expect_error(land("car", 500, std::nan("")), ErrorCode::value, "visibility cannot be used");
  expect_error(land("cat", 500, 5), ErrorCode::value, "'cat' is not a search object");
  request = sea("PIW", 5);
  request.wind = Speed::knots(-1);
  expect_error(request, ErrorCode::value, "wind speed cannot be used");
  request = sea("PIW", 5);
  request.sea = Length::metres(std::nan(""));
  expect_error(request, ErrorCode::value, "sea height cannot be used");
  request = sea("PIW", 5);
  request.ground_speed = Speed();
  expect_error(request, ErrorCode::value, "ground speed cannot be used");
  request = sea("PIW", 5);
  request.uncorrected = Length();
  expect_error(request, ErrorCode::value, "uncorrected sweep width cannot be used");
}

TEST(SweepWidth, SaysWhatWasTakenForGranted) {
  Request request = land("car", 500, 5);
  request.terrain.reset();
  EXPECT_THAT(sweep_width(request).cautions, Contains(HasSubstr("Terrain not given")));
  request = sea("PIW", 5);
  request.sea.reset();
  EXPECT_THAT(sweep_width(request).cautions, Contains(HasSubstr("Sea height not given")));
  request.wind = Speed::knots(30);  // it cannot get worse
  EXPECT_THAT(sweep_width(request).cautions, Not(Contains(HasSubstr("not given"))));
  request.wind.reset();
  EXPECT_THAT(sweep_width(request).cautions, Contains(HasSubstr("Wind and sea not given")));
}

TEST(SweepWidth, SaysWhatWasNotUsed) {
  Request request = land("car", 500, 5);
  request.wind = Speed::knots(30);
  request.ground_speed = Speed::knots(200);
  const SweepWidth found = sweep_width(request);
  EXPECT_EQ(found.width, found.uncorrected);
  EXPECT_THAT(format_working(found.working), HasSubstr("no weather factor over land"));
  EXPECT_THAT(format_working(found.working), HasSubstr("speed factors are for objects on water"));
  request = sea("PIW", 5);
  request.height = Length::feet(40);
  request.terrain = Terrain::hilly;
  request.ground_speed = Speed::knots(10);
  const std::string working = format_working(sweep_width(request).working);
  EXPECT_THAT(working, HasSubstr("not used: the table has no heights"));
  EXPECT_THAT(working, HasSubstr("not used over water"));
  EXPECT_THAT(working, HasSubstr("speed factors are for aircraft"));
}

TEST(GivenSweepWidth, KeepsTheValueAndItsSource) {
  const SweepWidth given = given_sweep_width(nm(1.2), "our manual, table 7");
  EXPECT_EQ(given.width, nm(1.2));
  EXPECT_EQ(given.uncorrected, nm(1.2));
  EXPECT_EQ(format_working(given.working),
            "Sweep width  given by the planner  = 1.2 NM  [1]\n[1] our manual, table 7\n");
  EXPECT_THROW(given_sweep_width(Length(), ""), Error);
  EXPECT_THROW(given_sweep_width(nm(INFINITY), ""), Error);
}

TEST(Conditions, ReadBackFromTheirNames) {
  for (const Platform each : {Platform::fixed_wing, Platform::helicopter, Platform::vessel,
                              Platform::small_boat, Platform::ground_team}) {
    EXPECT_EQ(parse_platform(name(each)), each);
  }
  for (const Terrain each :
       {Terrain::open, Terrain::hilly, Terrain::mountainous, Terrain::dense_vegetation}) {
    EXPECT_EQ(parse_terrain(name(each)), each);
  }
  EXPECT_EQ(parse_platform("Fixed Wing"), Platform::fixed_wing);
  EXPECT_EQ(parse_surface("water"), Surface::water);
  EXPECT_EQ(platform_names().size(), 5u);
  EXPECT_EQ(terrain_names().size(), 4u);
  EXPECT_THROW(parse_platform("glider"), Error);
  EXPECT_THROW(parse_terrain("moon"), Error);
}

}  // namespace
}  // namespace sweepwright::sweep
