// Chart sheets: numbers, quarters, overlaps, the user's own table.
#include "sweepwright/grid/chart.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "support/check_table.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::grid {
namespace {

using test::CheckRow;

Position at(double latitude, double longitude) {
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

class Chart : public testing::TestWithParam<CheckRow> {};
TEST_P(Chart, CellHasItsLimits) {
  const CheckRow& row = GetParam();
  const std::string name = row.text("chart") + " " + row.text("grid") + row.text("quarter");
  const Cell cell = chart_grid().cell(name);
  EXPECT_EQ(cell.box->north.degrees(), row.number("north_deg"));
  EXPECT_EQ(cell.box->south.degrees(), row.number("south_deg"));
  EXPECT_EQ(cell.box->west.degrees(), row.number("west_deg"));
  EXPECT_EQ(cell.box->east.degrees(), row.number("east_deg"));
  // The sheet itself calls the ground so, whatever sheet comes first there.
  bool found = false;
  for (const ChartName& on : chart_names(built_in_chart_sheets(), label_point(cell), cell.level)) {
    if (on.sheet == row.text("chart")) found = on.name == name;
  }
  EXPECT_TRUE(found) << name;
}
INSTANTIATE_TEST_SUITE_P(
    Table, Chart,
    testing::ValuesIn(test::check_rows("grid/chart.csv", {"chart", "grid", "quarter", "north_deg",
                                                          "south_deg", "west_deg", "east_deg"})),
    test::RowName());

class ChartOverlap : public testing::TestWithParam<CheckRow> {};
TEST_P(ChartOverlap, TheWesternmostSheetNamesTheGround) {
  const CheckRow& row = GetParam();
  const LatLonBox box{
      Angle::degrees(row.number("south_deg")), Angle::degrees(row.number("north_deg")),
      Angle::degrees(row.number("west_deg")), Angle::degrees(row.number("east_deg"))};
  const std::string& primary = row.text("primary_by_westernmost_rule");
  int cells = 0;
  chart_grid().visit(box, chart_grid().level("15min"), Selection::touching, [&](const Cell& cell) {
    ++cells;
    EXPECT_EQ(cell.name.substr(0, 3), primary);
    std::vector<std::string> sheets;
    for (const ChartName& on :
         chart_names(built_in_chart_sheets(), label_point(cell), cell.level)) {
      sheets.push_back(on.sheet);
    }
    EXPECT_EQ(sheets[0], primary);
    const std::set<std::string> both{row.text("chart_1"), row.text("chart_2")};
    EXPECT_EQ(std::set<std::string>(sheets.begin(), sheets.end()), both) << cell.name;
  });
  const double high = row.number("north_deg") - row.number("south_deg");
  const double wide = row.number("east_deg") - row.number("west_deg");
  EXPECT_EQ(cells, high * wide * 16);
}
INSTANTIATE_TEST_SUITE_P(Table, ChartOverlap,
                         testing::ValuesIn(test::check_rows("grid/chart_overlaps.csv",
                                                            {"chart_1", "chart_2", "north_deg",
                                                             "south_deg", "west_deg", "east_deg",
                                                             "primary_by_westernmost_rule"})),
                         test::RowName());

TEST(ChartNames, OtherSheetsAreUnderstood) {
  EXPECT_EQ(chart_grid().cell("STL 1").name, "MKC 25");
  EXPECT_EQ(chart_grid().cell("stl104d").name, "STL 104D");
  EXPECT_EQ(chart_grid().cell("STL-104-D").name, "STL 104D");
  // A recalled example: STL 104-D entered at its north-east corner, 39-07N 086-00W.
  EXPECT_EQ(chart_grid().name_of(at(39 + 7 / 60.0, -86), chart_grid().level("7.5min")), "STL 104D");
  EXPECT_TRUE(chart_names(built_in_chart_sheets(), at(0, 0), chart_grid().levels()[0]).empty());
}

TEST(ChartCells, AreAllCountedOnce) {
  // The world's chart cells: all sheets' cells, less those that two sheets share.
  const LatLonBox world{Angle::degrees(-90), Angle::degrees(90), Angle::degrees(-180),
                        Angle::degrees(180)};
  std::set<std::string> names;
  chart_grid().visit(world, chart_grid().level("15min"), Selection::touching,
                     [&](const Cell& cell) { names.insert(cell.name); });
  std::size_t sum = 0;
  for (const ChartSheet& sheet : built_in_chart_sheets()) {
    const LatLonBox& box = sheet.limits;
    sum += static_cast<std::size_t>((box.north - box.south).degrees() * width(box).degrees() * 16);
  }
  std::size_t shared = 0;
  for (const CheckRow& row : test::check_rows(
           "grid/chart_overlaps.csv", {"chart_1", "chart_2", "north_deg", "south_deg", "west_deg",
                                       "east_deg", "primary_by_westernmost_rule"})) {
    shared += static_cast<std::size_t>((row.number("north_deg") - row.number("south_deg")) *
                                       (row.number("east_deg") - row.number("west_deg")) * 16);
  }
  EXPECT_EQ(names.size(), sum - shared);
}

TEST(ChartEdges, SouthAndEastAreOwnedAndTheOuterLimitBelongsInside) {
  const Grid& grid = chart_grid();
  const Level& level = grid.level("15min");
  EXPECT_EQ(grid.name_of(at(39, -86), level), "STL 104");
  EXPECT_EQ(grid.name_of(at(39.25, -86.25), level), "STL 75");
  EXPECT_EQ(grid.name_of(at(49, -125), level), "SEA 1");  // north-west corner of all sheets
  EXPECT_EQ(grid.name_of(at(24, -77), level), "MIA 384");
  EXPECT_EQ(grid.name_of(at(33, -121.5), level), "LAX 287");
  EXPECT_FALSE(grid.covers(at(33, -121.50001)));
  EXPECT_THROW(grid.name_of(at(50, -100), level), Error);
}

constexpr std::string_view kPacific =
    "chart,name,north,south,west,east,cells\n"
    "WST,West of the line,10-00S,12-15S,178-45E,179-30W,63\n"
    "est,East of the line,10-00S,12-00S,180-00W,178-00W,64\n";

TEST(ChartTable, TheUsersTableMayCrossTheAntimeridian) {
  const std::vector<ChartSheet> sheets = read_chart_sheets(kPacific, "mine.csv");
  const std::unique_ptr<Grid> grid = make_chart_grid(sheets);
  const Level& level = grid->level("15min");
  EXPECT_EQ(grid->name_of(at(-10.1, 178.8), level), "WST 1");
  EXPECT_EQ(grid->name_of(at(-10.1, -179.9), level), "WST 6");  // the westernmost of two
  EXPECT_EQ(grid->name_of(at(-10.1, -179.4), level), "EST 3");
  EXPECT_EQ(grid->name_of(at(-12.2, -179.6), level), "WST 63");
  EXPECT_EQ(grid->cell("EST 1").name, "WST 6");
  const std::vector<Cell> beside = grid->neighbours(grid->cell("WST 5"));
  const bool across = std::any_of(beside.begin(), beside.end(),
                                  [](const Cell& cell) { return cell.name == "WST 6"; });
  EXPECT_TRUE(across);
}

struct BadTable {
  const char* text;
  const char* where;
};
class BadChartTable : public testing::TestWithParam<BadTable> {};
TEST_P(BadChartTable, IsRefusedWithItsLine) {
  const std::string head = "# note: x\nchart,name,north,south,west,east,cells\n";
  try {
    read_chart_sheets(head + GetParam().text, "mine.csv");
    FAIL();
  } catch (const Error& error) {
    EXPECT_EQ(error.where(), GetParam().where) << error.what();
  }
}
INSTANTIATE_TEST_SUITE_P(
    Own, BadChartTable,
    testing::Values(BadTable{"", "mine.csv"}, BadTable{"A,a,40-00N\n", "mine.csv: line 3"},
                    BadTable{"A,a,40-00N,39-00N,91-00W,90-00W,15\n", "mine.csv: line 3"},
                    BadTable{"A,a,40-10N,39-00N,91-00W,90-00W,16\n", "mine.csv: line 3"},
                    BadTable{"A,a,91-00N,39-00N,91-00W,90-00W,16\n", "mine.csv: line 3"},
                    BadTable{"A,a,40-60N,39-00N,91-00W,90-00W,16\n", "mine.csv: line 3"},
                    BadTable{"A,a,39-00N,40-00N,91-00W,90-00W,16\n", "mine.csv: line 3"},
                    BadTable{"A1,a,40-00N,39-00N,91-00W,90-00W,16\n", "mine.csv: line 3"},
                    BadTable{"A,\"a\",40-00N,39-00N,91-00W,90-00W,16\n", "mine.csv: line 3"},
                    BadTable{"A,a,40-00N,39-00N,91-00W,90-00W,16\n"
                             "a,b,40-00N,39-00N,91-00W,90-00W,16\n",
                             "mine.csv: line 4"}));

TEST(ChartTable, ColumnsMustBeThose) {
  EXPECT_THROW(read_chart_sheets("chart,north\nA,40\n", "mine.csv"), Error);
  EXPECT_THROW(read_chart_sheets("\xff", "mine.csv"), Error);
  EXPECT_THROW(read_chart_sheets("", "mine.csv"), Error);
}

}  // namespace
}  // namespace sweepwright::grid
