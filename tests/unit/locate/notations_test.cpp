// What is written in each notation: published names, and that every one is read back.
#include "sweepwright/locate/notations.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "support/check_table.hpp"
#include "support/ground.hpp"
#include "sweepwright/grid/chart.hpp"
#include "sweepwright/grid/georef.hpp"
#include "sweepwright/grid/mgrs.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::locate {
namespace {

using test::at;
using test::CheckRow;

class GeorefName : public testing::TestWithParam<CheckRow> {};

TEST_P(GeorefName, IsThePublishedOne) {
  const CheckRow& row = GetParam();
  const Position position = at(row.number("lat_deg"), row.number("lon_deg"));
  EXPECT_EQ(format_georef(position, 0), row.text("min_1"));
  EXPECT_EQ(format_georef(position, 1), row.text("min_0.1"));
  EXPECT_EQ(format_georef(position, 2), row.text("min_0.01"));
}

INSTANTIATE_TEST_SUITE_P(GeographicLib, GeorefName,
                         testing::ValuesIn(test::check_rows("grid/georef.csv",
                                                            {"lat_deg", "lon_deg", "tile_15deg",
                                                             "deg_1", "min_1", "min_0.1",
                                                             "min_0.01", "source", "note"})),
                         test::RowName());

class MgrsAndUtm : public testing::TestWithParam<CheckRow> {};

TEST_P(MgrsAndUtm, AreThePublishedOnes) {
  const CheckRow& row = GetParam();
  const Position position = at(row.number("lat_deg"), row.number("lon_deg"));
  EXPECT_EQ(format_mgrs(position, 5), row.text("mgrs_1m"));
  EXPECT_EQ(format_mgrs(position, 3), row.text("mgrs_100m"));
  EXPECT_EQ(format_mgrs(position, 2), row.text("mgrs_1km"));
  EXPECT_EQ(format_mgrs(position, 0), row.text("mgrs_100km"));

  const std::string zone = row.text("zone_0_is_ups") == "0" ? "UPS" : row.text("zone_0_is_ups");
  const std::string hemisphere = row.text("hemisphere") == "N" ? "north" : "south";
  EXPECT_EQ(format_utm(position, 4), zone + " " + hemisphere + " " + row.text("easting_m") + "mE " +
                                         row.text("northing_m") + "mN");
}

INSTANTIATE_TEST_SUITE_P(GeographicLib, MgrsAndUtm,
                         testing::ValuesIn(test::check_rows(
                             "grid/mgrs.csv",
                             {"lat_deg", "lon_deg", "zone_0_is_ups", "hemisphere", "easting_m",
                              "northing_m", "mgrs_1m", "mgrs_100m", "mgrs_1km", "mgrs_100km",
                              "second_package_agrees", "note"})),
                         test::RowName());

// One test for the whole table: 2,000 registered ones would only slow the run.
TEST(MgrsAgainstTheNgaPackage, agrees_on_two_thousand_places) {
  const auto rows =
      test::check_rows("grid/mgrs_nga_package.csv", {"lat_deg", "lon_deg", "mgrs_1m"});
  ASSERT_EQ(rows.size(), 2000u);
  for (const test::CheckRow& row : rows) {
    const std::string ours = format_mgrs(at(row.number("lat_deg"), row.number("lon_deg")));
    // The package writes no leading zero of a zone.
    EXPECT_EQ(ours.substr(ours[0] == '0' ? 1 : 0), row.text("mgrs_1m"));
  }
}

TEST(Notations, keys_and_order_are_fixed) {
  std::vector<std::string> keys;
  for (const Written& written : notations(at(38.25, -117))) keys.emplace_back(written.key);
  EXPECT_THAT(keys, testing::ElementsAre("decimal", "minutes", "seconds", "utm", "mgrs", "gars",
                                         "georef", "quarter", "chart"));
}

TEST(Notations, no_chart_name_where_there_is_no_sheet) {
  EXPECT_EQ(notations(at(-33.8, 151.2)).back().text, "");
  EXPECT_EQ(notations(at(39.0625, -86.0625)).back().text, "STL 104D");
}

TEST(Notations, one_alone_is_the_same_as_among_all) {
  for (const Written& written : notations(at(38.25, -117))) {
    EXPECT_EQ(format_notation(written.key, at(38.25, -117)), written.text) << written.key;
  }
  EXPECT_THROW(format_notation("mgsr", {}), Error);
}

TEST(Notations, hemisphere_letters_and_charts_are_the_users) {
  Writing writing;
  writing.hemisphere_letters = true;
  writing.charts = grid::make_chart_grid(grid::read_chart_sheets(
      "chart,name,north,south,west,east,cells\nOWN,Own,39-00N,38-00N,118-00W,117-00W,16\n", "own"));
  EXPECT_EQ(format_notation("quarter", at(38.25, -117.04), writing), "38N/117WDBDD");
  EXPECT_EQ(format_notation("chart", at(38.25, -117.04), writing), "OWN 12D");
}

TEST(Notations, digits_have_limits) {
  EXPECT_THROW(format_utm({}, -1), Error);
  EXPECT_THROW(format_utm({}, 10), Error);
  EXPECT_THROW(format_mgrs({}, 12), Error);
  EXPECT_THROW(format_georef({}, 8), Error);
}

/// A place anywhere: often on or beside an edge of grids, the equator, a pole or the antimeridian.
Position any_place() {
  const auto coordinate = [](int most) {
    const double limit = most;
    switch (*rc::gen::inRange(0, 4)) {
      case 0:
        return *rc::gen::inRange(-most * 12, most * 12 + 1) / 12.0;
      case 1:
        return *rc::gen::element(-limit, -1e-9, 0.0, 1e-9, limit, limit - 1e-9, 1e-9 - limit, 84.0,
                                 -80.0, 56.0, 64.0, 72.0);
      default:
        return *rc::gen::inRange(-most * 10000000, most * 10000000 + 1) / 1e7;
    }
  };
  return at(coordinate(90), coordinate(180));
}

double metres_off(Position position, const std::string& text, const Options& options = {}) {
  RC_LOG() << text << std::endl;
  return geodesic(position, read_position(text, options).position).length.metres();
}

/// True when `text` is read as a place within these halves of a cell.
bool within(Position position, const std::string& text, double half_cell_degrees) {
  RC_LOG() << text << std::endl;
  const Position back = read_position(text).position;
  const double most = half_cell_degrees + 1e-12;
  return std::abs(back.latitude().degrees() - position.latitude().degrees()) <= most &&
         std::abs(std::remainder(back.longitude().degrees() - position.longitude().degrees(),
                                 360.0)) <= most;
}

// Half the diagonal of a square of one, and the most that a zone's scale (0.9996, at the poles
// 0.994) adds.
constexpr double kHalfDiagonal = 0.7072 * 1.0065;

/// P1 for UTM, UPS and MGRS.
RC_GTEST_PROP(Notations, metric_ones_are_read_back, ()) {
  const Position position = any_place();
  const int decimals = *rc::gen::inRange(0, 7);
  RC_ASSERT(metres_off(position, format_utm(position, decimals)) <=
            kHalfDiagonal * std::pow(10, -decimals) + 1e-7);
  const int digits = *rc::gen::inRange(0, 9);
  RC_ASSERT(metres_off(position, format_mgrs(position, digits)) <=
            kHalfDiagonal * std::pow(10, 5 - digits) + 1e-7);
}

/// P1 for the names of cells.
RC_GTEST_PROP(Notations, cells_are_read_back, ()) {
  const Position position = any_place();
  const int decimals = *rc::gen::inRange(0, 8);
  RC_ASSERT(within(position, format_georef(position, decimals), std::pow(10, -decimals) / 120));
  for (const Written& written : notations(position)) {
    if (written.key == "gars") RC_ASSERT(within(position, written.text, 2.5 / 60));
    if (written.key == "quarter") RC_ASSERT(within(position, written.text, 3.75 / 120));
    if (written.key == "chart" && !written.text.empty()) {
      RC_ASSERT(within(position, written.text, 7.5 / 120));
    }
  }
}

/// Two rooms write GEOREF and MGRS; they never disagree.
RC_GTEST_PROP(Notations, agree_with_the_grids, ()) {
  const Position position = any_place();
  const grid::Grid& georef = grid::georef_grid();
  RC_ASSERT(format_georef(position, 0) == georef.name_of(position, georef.levels().back()));
  const grid::Grid& mgrs = grid::mgrs_grid();
  RC_ASSERT(format_mgrs(position, 3) == mgrs.name_of(position, mgrs.level("100m")));
}

/// P1 for bearing and distance: half of 0.1 degree along the arc, half of 0.01 NM, and the rounding
/// of the place to start from.
RC_GTEST_PROP(Notations, bearing_and_distance_are_read_back, ()) {
  const Position from = any_place();
  const Length distance = Length::nautical_miles(*rc::gen::inRange(0, 30000) / 100.0);
  const TrueDirection track = TrueDirection::degrees(*rc::gen::inRange(0, 36000) / 100.0);
  const Position position = travel(from, track, distance).position;
  const double rounding_of_start = Length::nautical_miles(0.005 * std::sqrt(2) * 1.01).metres();
  RC_ASSERT(metres_off(position, format_bearing_distance(from, position)) <=
            distance.metres() * Angle::degrees(0.05001).radians() +
                Length::nautical_miles(0.005).metres() + rounding_of_start + 1);
}

/// The same for the ICAO form: half a degree, half a mile, and the variation in between.
RC_GTEST_PROP(Notations, icao_bearings_are_read_back, ()) {
  const Position from = any_place();
  const Length distance = Length::nautical_miles(*rc::gen::inRange(1, 999));
  const TrueDirection track = TrueDirection::degrees(*rc::gen::inRange(0, 36000) / 100.0);
  const Position position = travel(from, track, distance).position;
  Options options;
  options.points = {{"XYZ", from}};
  options.variation = [](Position place) { return Angle::degrees(place.latitude().degrees() / 5); };
  const std::string text = format_icao_bearing("xyz", from, position, options.variation);
  RC_ASSERT(text.size() == 9u);
  RC_ASSERT(metres_off(position, text, options) <=
            distance.metres() * Angle::degrees(0.501).radians() +
                Length::nautical_miles(0.5).metres() + 1);
}

TEST(Notations, icao_bearing_says_what_it_cannot_write) {
  const auto variation = [](Position) { return Angle::degrees(0); };
  EXPECT_EQ(format_icao_bearing("ABC", at(38, -117), at(39, -117), variation), "ABC360060");
  EXPECT_THROW(format_icao_bearing("ABC", at(38, -117), at(39, -117), {}), Error);
  EXPECT_THROW(format_icao_bearing("A", at(38, -117), at(39, -117), variation), Error);
  EXPECT_THROW(format_icao_bearing("AB1", at(38, -117), at(39, -117), variation), Error);
  EXPECT_THROW(format_icao_bearing("ABC", at(38, -117), at(-38, 63), variation), Error);
}

TEST(Notations, bearing_never_shows_360) {
  const Position from = at(38, -117);
  const Position position =
      travel(from, TrueDirection::degrees(359.97), Length::nautical_miles(5)).position;
  EXPECT_EQ(format_bearing_distance(from, position), "FROM 38-00.00N 117-00.00W 000.0T 5.00NM");
}

}  // namespace
}  // namespace sweepwright::locate
