// Names against published and derived tables.
#include <gtest/gtest.h>

#include <random>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/grid/quarter.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::grid {
namespace {

using test::CheckRow;

Position position(const CheckRow& row, const std::string& latitude, const std::string& longitude) {
  return Position::at(Angle::degrees(row.number(latitude)), Angle::degrees(row.number(longitude)));
}

std::string name(std::string_view system, Position place, std::string_view level) {
  const Grid& used = grid(system);
  return used.name_of(place, used.level(level));
}

class Quarter : public testing::TestWithParam<CheckRow> {};
TEST_P(Quarter, NamesPosition) {
  const CheckRow& row = GetParam();
  const Position place = position(row, "lat_deg", "lon_deg");
  const std::string& degree = row.text("cell_1deg");
  EXPECT_EQ(name("quarter", place, "1deg"), degree);
  EXPECT_EQ(name("quarter", place, "30min"), degree + row.text("q30min"));
  EXPECT_EQ(name("quarter", place, "15min"), degree + row.text("q15min"));
  EXPECT_EQ(name("quarter", place, "7.5min"), degree + row.text("q7.5min"));
  EXPECT_EQ(name("quarter", place, "3.75min"), degree + row.text("q3.75min"));
}
INSTANTIATE_TEST_SUITE_P(Table, Quarter,
                         testing::ValuesIn(test::check_rows(
                             "grid/quarter.csv", {"lat_deg", "lon_deg", "cell_1deg", "q30min",
                                                  "q15min", "q7.5min", "q3.75min"})),
                         test::RowName());

class QuarterHemispheres : public testing::TestWithParam<CheckRow> {};
TEST_P(QuarterHemispheres, NamesPosition) {
  const CheckRow& row = GetParam();
  EXPECT_EQ(name("quarter", position(row, "lat_deg", "lon_deg"), "3.75min"), row.text("name"))
      << row.text("note");
}
INSTANTIATE_TEST_SUITE_P(Table, QuarterHemispheres,
                         testing::ValuesIn(test::check_rows("grid/quarter_hemispheres.csv",
                                                            {"lat_deg", "lon_deg", "name",
                                                             "note"})),
                         test::RowName());

TEST(QuarterLetters, AreWrittenOnRequest) {
  EXPECT_EQ(with_hemisphere_letters("36/102"), "36N/102W");
  EXPECT_EQ(with_hemisphere_letters(" 36/102aad "), "36N/102WAAD");
  EXPECT_EQ(with_hemisphere_letters("34S/152EB"), "34S/152EB");
  const Grid& lettered = lettered_quarter_grid();
  EXPECT_EQ(lettered.name_of(Position::at(Angle::degrees(36.9), Angle::degrees(-102.9)),
                             lettered.level("30min")),
            "36N/102WA");
  EXPECT_EQ(lettered.cell("36/102A").name, "36N/102WA");  // both forms are read
  EXPECT_EQ(quarter_grid().cell("36n/102wA").name, "36/102A");
  EXPECT_EQ(quarter_grid().cell("6/99").name, "06/099");
}

TEST(QuarterCorner, LiesSouthEastOfTheCell) {
  // Mission Aircrew Reference Text Vol II, section 5.10.1: 36/102 is 36-37 N, 102-103 W.
  const LatLonBox box = *quarter_grid().cell("36/102").box;
  EXPECT_EQ(box.south, Angle::degrees(36));
  EXPECT_EQ(box.north, Angle::degrees(37));
  EXPECT_EQ(box.west, Angle::degrees(-103));
  EXPECT_EQ(box.east, Angle::degrees(-102));
}

class Gars : public testing::TestWithParam<CheckRow> {};
TEST_P(Gars, NamesPosition) {
  const CheckRow& row = GetParam();
  const Position place = position(row, "lat_deg", "lon_deg");
  EXPECT_EQ(name("gars", place, "30min"), row.text("gars_30min"));
  EXPECT_EQ(name("gars", place, "15min"), row.text("gars_15min"));
  EXPECT_EQ(name("gars", place, "5min"), row.text("gars_5min"));
  const LatLonBox box = *grid("gars").cell(row.text("gars_5min")).box;
  EXPECT_NEAR(box.south.degrees(), row.number("sw_corner_lat_5min"), 5.1e-9);
  EXPECT_NEAR(box.west.degrees(), row.number("sw_corner_lon_5min"), 5.1e-9);
}
INSTANTIATE_TEST_SUITE_P(
    Table, Gars,
    testing::ValuesIn(test::check_rows("grid/gars.csv",
                                       {"lat_deg", "lon_deg", "gars_30min", "gars_15min",
                                        "gars_5min", "sw_corner_lat_5min", "sw_corner_lon_5min",
                                        "second_package_agrees", "note"})),
    test::RowName());

// One test for the whole table: 2,000 registered ones would only slow the run.
TEST(GarsAgainstTheNgaPackage, AgreesOnTwoThousandPlaces) {
  const auto rows =
      test::check_rows("grid/gars_nga_package.csv", {"lat_deg", "lon_deg", "gars_5min"});
  ASSERT_EQ(rows.size(), 2000u);
  for (const CheckRow& row : rows) {
    EXPECT_EQ(name("gars", position(row, "lat_deg", "lon_deg"), "5min"), row.text("gars_5min"));
  }
}

class GarsEdges : public testing::TestWithParam<CheckRow> {};
TEST_P(GarsEdges, BelongToTheCellNorthAndEast) {
  const CheckRow& row = GetParam();
  const std::string& expected = row.text("gars_5min_sw_inclusive");
  EXPECT_EQ(name("gars", position(row, "lat_deg_double", "lon_deg_double"), "5min"), expected)
      << row.text("lat_deg_plus_min") << ' ' << row.text("lon_deg_plus_min");
  // The cell's own corner is that very double.
  const LatLonBox box = *grid("gars").cell(expected).box;
  EXPECT_EQ(box.south.degrees(), row.number("lat_deg_double"));
  EXPECT_EQ(box.west.degrees(), row.number("lon_deg_double"));
}
INSTANTIATE_TEST_SUITE_P(Table, GarsEdges,
                         testing::ValuesIn(test::check_rows("grid/gars_exact_edges.csv",
                                                            {"lat_deg_double", "lon_deg_double",
                                                             "lat_deg_plus_min", "lon_deg_plus_min",
                                                             "gars_5min_sw_inclusive"})),
                         test::RowName());

class Georef : public testing::TestWithParam<CheckRow> {};
TEST_P(Georef, NamesPosition) {
  const CheckRow& row = GetParam();
  const Position place = position(row, "lat_deg", "lon_deg");
  EXPECT_EQ(name("georef", place, "15deg"), row.text("tile_15deg"));
  EXPECT_EQ(name("georef", place, "1deg"), row.text("deg_1"));
  EXPECT_EQ(name("georef", place, "1min"), row.text("min_1"));
}
INSTANTIATE_TEST_SUITE_P(Table, Georef,
                         testing::ValuesIn(test::check_rows("grid/georef.csv",
                                                            {"lat_deg", "lon_deg", "tile_15deg",
                                                             "deg_1", "min_1", "min_0.1",
                                                             "min_0.01", "source", "note"})),
                         test::RowName());

class BadName : public testing::TestWithParam<CheckRow> {};
TEST_P(BadName, IsRefusedWithItsPlace) {
  const CheckRow& row = GetParam();
  try {
    grid(row.text("system")).cell(row.text("name"));
    FAIL() << "accepted " << row.text("name");
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::value);
    EXPECT_EQ(error.where(), "character " + row.text("character")) << error.what();
    EXPECT_FALSE(error.hint().empty());
    EXPECT_NE(error.message().find("expected"), std::string::npos);
  }
}
INSTANTIATE_TEST_SUITE_P(Table, BadName,
                         testing::ValuesIn(test::check_rows("grid/bad_names.csv",
                                                            {"system", "name", "character"})),
                         test::RowName());

TEST(AnyText, IsReadOrRefusedNothingElse) {
  std::mt19937 random(3);
  constexpr std::string_view kAlphabet = "0123456789ABCDEFGHJKLMNPQRSTUVWXYZNSEW/ -aZ\xc3\xa9\x00";
  std::uniform_int_distribution<std::size_t> pick(0, kAlphabet.size() - 1);
  std::uniform_int_distribution<std::size_t> size(0, 12);
  int read = 0;
  for (const std::string_view system : systems()) {
    const Grid& used = grid(system);
    const std::string good = used.name_of(
        Position::at(Angle::degrees(40.1), Angle::degrees(-100.1)), used.levels().back());
    for (int i = 0; i < 20'000; ++i) {
      std::string text = good;  // half of them: a good name with one character changed
      if (i % 2 == 0) {
        text.clear();
        for (std::size_t k = size(random); k > 0; --k) text += kAlphabet[pick(random)];
      } else {
        text[pick(random) % text.size()] = kAlphabet[pick(random)];
      }
      try {
        const Cell cell = used.cell(text);
        ASSERT_EQ(used.cell(cell.name).name, cell.name) << text;
        ++read;
      } catch (const Error& error) {
        ASSERT_EQ(error.code(), ErrorCode::value) << text;
      }
    }
  }
  EXPECT_GT(read, 1'000);
}

TEST(Systems, UnknownNamesGetTheNearestSpelling) {
  try {
    grid("gras");
    FAIL();
  } catch (const Error& error) {
    EXPECT_NE(error.hint().find("gars"), std::string::npos) << error.hint();
  }
  EXPECT_THROW(grid("gars").level("7.5min"), Error);
  EXPECT_THROW(grid("local"), Error);
}

}  // namespace
}  // namespace sweepwright::grid
