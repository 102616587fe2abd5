// Coordinates as written, for systems made up here.
#include "sweepwright/reference/coordinates_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sweepwright/base/error.hpp"

namespace sweepwright::reference {
namespace {

using testing::HasSubstr;

SystemInfo projected(const std::string& first, const std::string& second) {
  return {.code = "EPSG:1",
          .name = "own",
          .axes = {Axis{"Easting", first, "metre"}, Axis{"Northing", second, "metre"}},
          .area = {},
          .software = {}};
}

SystemInfo geographic(const std::string& first, const std::string& second,
                      const std::string& unit) {
  return {.code = "EPSG:1",
          .name = "own",
          .geographic = true,
          .axes = {Axis{"Latitude", first, unit}, Axis{"Longitude", second, unit}},
          .area = {},
          .software = {}};
}

void expect_read(const std::string& text, const SystemInfo& system, double first, double second) {
  const std::vector<CoordinatesReading> readings = parse_coordinates(text, system);
  ASSERT_EQ(readings.size(), 1u) << text;
  EXPECT_DOUBLE_EQ(readings[0].coordinates.first, first) << text;
  EXPECT_DOUBLE_EQ(readings[0].coordinates.second, second) << text;
}

void expect_refused(const std::string& text, const SystemInfo& system, const std::string& where,
                    const std::string& words) {
  try {
    parse_coordinates(text, system);
    ADD_FAILURE() << "no error: " << text;
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::value);
    EXPECT_EQ(error.where(), where) << text;
    EXPECT_THAT(error.message(), HasSubstr(words)) << text;
    EXPECT_FALSE(error.hint().empty());
  }
}

TEST(CoordinatesText, two_numbers_follow_the_axes) {
  const SystemInfo grid = projected("east", "north");
  for (const char* text :
       {"651409.9 313177.25", "651409.9,313177.25", "651409.9; 313177.25", "  651409.9\t313177.25 ",
        "E651409.9 N313177.25", "651409.9E 313177.25N", "651409.9 e, 313177.25 n",
        "E 651409.9 N 313177.25", "N313177.25 E651409.9", "313177.25N,651409.9E"}) {
    expect_read(text, grid, 651409.9, 313177.25);
  }
  expect_read("-12.5 -0.25", grid, -12.5, -0.25);
  expect_read("W 5 S 6", projected("west", "south"), 5, 6);
  expect_read("E 5 N 6", projected("north", "east"), 6, 5);
  EXPECT_EQ(parse_coordinates("651409.9 313177.3", grid)[0].read_as,
            "Easting 651409.9 metre, Northing 313177.3 metre");
}

TEST(CoordinatesText, what_is_no_pair_of_numbers_is_refused_at_its_place) {
  const SystemInfo grid = projected("east", "north");
  expect_refused("", grid, "character 1", "expected a number, found the end");
  expect_refused("651409", grid, "character 7", "expected a number, found the end");
  expect_refused("651409 x", grid, "character 8", "expected a number");
  expect_refused(", 651409 313177", grid, "character 1", "expected a number");
  expect_refused("651409,,313177", grid, "character 8", "expected a number");
  expect_refused("651409 313177 12", grid, "character 15", "expected the end");
  expect_refused("651409,9 313177,3", grid, "character 10", "expected the end");
  expect_refused("nan 313177", grid, "character 1", "expected a number");
  expect_refused("inf 313177", grid, "character 1", "expected a number");
  expect_refused("S651409 N313177", grid, "character 1", "letters do not fit");
  expect_refused("E651409 E313177", grid, "character 9", "letters do not fit");
  expect_refused("651409 N313177", grid, "character 1", "letters do not fit");
  expect_refused("651409m 313177m", grid, "character 7", "expected a number");
  expect_refused(std::string(1, '\0'), grid, "character 1", "expected a number");
}

TEST(CoordinatesText, degrees_are_read_in_every_notation) {
  const SystemInfo degrees = geographic("north", "east", "degree");
  expect_read("38-15.0N 117-02.5W", degrees, 38.25, -(117 + 2.5 / 60));
  expect_read("117 02.5 W 38 15 N", degrees, 38.25, -(117 + 2.5 / 60));
  expect_read("38.25, -117.5", degrees, 38.25, -117.5);
  expect_refused("38-75.0N 117-02.5W", degrees, "character 4", "75");
  EXPECT_EQ(parse_coordinates("10 20", degrees).size(), 2u);
}

TEST(CoordinatesText, longitude_first_is_kept_and_never_guessed) {
  const SystemInfo degrees = geographic("east", "north", "degree");
  expect_read("38-15.0N 117-02.5W", degrees, -(117 + 2.5 / 60), 38.25);
  expect_refused("10 20", degrees, "character 1", "puts longitude first");
}

TEST(CoordinatesText, grads_are_plain_numbers) {
  expect_read("54.3 2.6", geographic("north", "east", "grad"), 54.3, 2.6);
  expect_read("E2.6 N54.3", geographic("north", "east", "grad"), 54.3, 2.6);
}

}  // namespace
}  // namespace sweepwright::reference
