// Tables of a planner's own, in the form of the built-in ones. All values here are invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sweepwright/base/error.hpp"
#include "sweepwright/sweep/search_object.hpp"
#include "sweepwright/sweep/sweep_width.hpp"

namespace sweepwright::sweep {
namespace {

using testing::HasSubstr;

const std::string kHead =
    "# kind: sweep width\n"
    "# title: Invented manual\n"
    "# section: table 1\n"
    "# status: seen\n"
    "# surface: water\n"
    "# platforms: helicopter; fixed-wing\n"
    "# units: ft, NM\n"
    "# note: holds a cell with a comma\n";
const std::string kHelicopterTable = kHead +
                                     "search_object,height_ft,width_nm_vis_3nm,width_nm_vis_6nm\n"
                                     "Person in water,300,0.1,0.2\n"
                                     "Person in water,600,0.3,0.4\n"
                                     "\"Kayak, capsized\",300,0.5,\n";

TEST(UserTable, CoversAircraftOverWater) {
  const Tables tables = with_table(built_in_tables(), kHelicopterTable, "own.csv");
  const SweepWidth found = sweep_width({.platform = Platform::helicopter,
                                        .object = "PIW",
                                        .visibility = Length::nautical_miles(4.5),
                                        .height = Length::feet(450),
                                        .wind = Speed::knots(5),
                                        .sea = Length::metres(0.2),
                                        .ground_speed = Speed::knots(90),
                                        .weather_table = "us-1991"},
                                       tables);
  EXPECT_NEAR(found.width.nautical_miles(), 0.25, 1e-12);
  EXPECT_THAT(format_working(found.working), HasSubstr("Invented manual, table 1\n"));
  // The built-in tables of the other surface and platform stay.
  EXPECT_EQ(tables.widths.size(), 3u);
}

TEST(UserTable, AddsItsOwnObjects) {
  const Tables tables = with_table(built_in_tables(), kHelicopterTable, "own.csv");
  EXPECT_EQ(parse_search_object("kayak, capsized", tables).surface, Surface::water);
  const Request request{.platform = Platform::helicopter,
                        .object = "Kayak, capsized",
                        .visibility = Length::nautical_miles(3),
                        .height = Length::feet(300)};
  try {
    sweep_width(request, tables);  // no weather table knows this object
    ADD_FAILURE() << "no error";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::impossible);
    EXPECT_THAT(error.what(), HasSubstr("no row for 'Kayak, capsized'"));
  }
}

TEST(UserTable, EmptyCellInUseIsRefused) {
  const Tables tables = with_table(built_in_tables(), kHelicopterTable, "own.csv");
  try {
    sweep_width({.platform = Platform::helicopter,
                 .object = "Kayak, capsized",
                 .visibility = Length::nautical_miles(4),
                 .height = Length::feet(300)},
                tables);
    ADD_FAILURE() << "no error";
  } catch (const Error& error) {
    EXPECT_THAT(error.what(), HasSubstr("prints no sweep width for 'Kayak, capsized'"));
  }
}

TEST(UserTable, AWidthOf0IsRefused) {
  const Tables tables = with_table(
      built_in_tables(),
      kHead + "search_object,height_ft,width_nm_vis_3nm\nPerson in water,500,0\n", "own.csv");
  try {
    sweep_width({.platform = Platform::helicopter,
                 .object = "PIW",
                 .visibility = Length::nautical_miles(3),
                 .height = Length::feet(500)},
                tables);
    ADD_FAILURE() << "no error";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::impossible);
    EXPECT_THAT(error.what(), HasSubstr("sweep width of 0"));
  }
}

TEST(UserTable, TakesThePlaceOfABuiltInOne) {
  const std::string text =
      "\xEF\xBB\xBF# kind: weather factor\r\n# key: iamsar\r\n# title: Own\r\n# section: 1\r\n"
      "# status: seen\r\n# units: none\r\n# moderate_wind_over: 10kt\r\n"
      "# moderate_sea_from: 1m\r\n# high_wind_over: 20kt\r\n# high_sea_over: 2m\r\n"
      "class,search_objects,light,moderate,high\r\nSmall,Person in water,0.9,0.8,0.7\r\n";
  const Tables tables = with_table(built_in_tables(), text, "own.csv");
  EXPECT_EQ(tables.weather.size(), built_in_tables().weather.size());
  const SweepWidth found = sweep_width({.platform = Platform::vessel,
                                        .object = "PIW",
                                        .wind = Speed::knots(12),
                                        .uncorrected = Length::nautical_miles(1)},
                                       tables);
  EXPECT_NEAR(found.width.nautical_miles(), 0.8, 1e-12);
}

struct BadTable {
  const char* name;
  std::string text;
  const char* message;
};

void PrintTo(const BadTable& bad, std::ostream* out) {
  *out << bad.name;
}

class BadTables : public testing::TestWithParam<BadTable> {};

TEST_P(BadTables, AreRefusedWithTheirPlace) {
  try {
    with_table(built_in_tables(), GetParam().text, "own.csv");
    ADD_FAILURE() << "no error";
  } catch (const Error& error) {
    EXPECT_EQ(error.code(), ErrorCode::input);
    EXPECT_THAT(error.what(), HasSubstr(GetParam().message));
  }
}

std::string weather(const std::string& settings, const std::string& rows) {
  return "# kind: weather factor\n# title: t\n# section: s\n# status: seen\n# units: u\n# key: "
         "k\n" +
         settings + rows;
}

const std::string kColumns = "search_object,width_nm_vis_3nm\n";  // line 9 after kHead
const std::string kLimits =
    "# moderate_wind_over: 15kt\n# moderate_sea_from: 1m\n# high_wind_over: 25kt\n"
    "# high_sea_over: 2m\n";
const std::string kWeatherColumns = "class,search_objects,light,moderate,high\n";  // line 11

INSTANTIATE_TEST_SUITE_P(
    All, BadTables,
    testing::Values(
        BadTable{"Empty", "", "own.csv: the table has no line of column names"},
        BadTable{"NoRows", kHead + kColumns, "own.csv: the table has no rows"},
        BadTable{"NotUtf8", "# title: \xFF\n", "own.csv: the table is not UTF-8 text"},
        BadTable{"NoKind", "# title: a\na,b\n1,2\n", "own.csv: the table has no"},
        BadTable{"NoStatus",
                 "# kind: sweep width\n# title: a\n# section: b\n# units: c\na,b\n1,2\n",
                 "the table has no 'status'"},
        BadTable{"BadStatus",
                 "# kind: sweep width\n# title: a\n# section: b\n# units: c\n# status: sen\na\n1\n",
                 "own.csv:5: 'sen' is not a table's status; did you mean 'seen'?"},
        BadTable{"BadKind",
                 "# kind: sweep widt\n# title: a\n# section: b\n# units: c\n# status: seen\na\n1\n",
                 "own.csv:1: 'sweep widt' is not a kind of table; did you mean 'sweep width'?"},
        BadTable{"CommentWithoutKey", "# hello\n", "own.csv:1: '# hello' is not of the form"},
        BadTable{"SettingTwice", "# title: a\n# title: b\n", "own.csv:2: 'title' is set twice"},
        BadTable{"UnknownSetting", kHead + "# plattform: vessel\n" + kColumns + "a,1\n",
                 "own.csv:9: 'plattform' is not a setting"},
        BadTable{"UnknownColumn", kHead + "search_object,height_m,width_nm_vis_3nm\na,1,2\n",
                 "own.csv:9: the column 'height_m' is not known"},
        BadTable{"ColumnTwice", kHead + "search_object,search_object\na,1\n",
                 "own.csv:9: the column 'search_object' stands twice"},
        BadTable{"FirstColumn", kHead + "object,width_nm_vis_3nm\na,1\n",
                 "own.csv:9: the first column must be 'search_object'"},
        BadTable{"NoVisibility", kHead + "search_object,height_ft\na,500\n",
                 "own.csv:9: the table has no column for a visibility"},
        BadTable{"FallingVisibility",
                 kHead + "search_object,width_nm_vis_5nm,width_nm_vis_3nm\na,1,2\n",
                 "own.csv:9: the visibilities of the columns do not rise"},
        BadTable{"Cells", kHead + kColumns + "Boat, open,1\n",
                 "own.csv:10: found 3 cells, expected 2"},
        BadTable{"Quote", kHead + kColumns + "\"Boat,1\n", "own.csv:10: a double quote is opened"},
        BadTable{"NotANumber", kHead + kColumns + "Boat,wide\n", "own.csv:10: "},
        BadTable{"Negative", kHead + kColumns + "Boat,-1\n",
                 "own.csv:10: the sweep width is -1, expected 0 to 60"},
        BadTable{"NoObject", kHead + kColumns + ",1\n", "own.csv:10: the search object is empty"},
        BadTable{"ObjectTwice", kHead + kColumns + "Boat,1\nboat,2\n",
                 "own.csv:11: 'boat' stands twice"},
        BadTable{"FallingHeight",
                 kHead + "search_object,height_ft,width_nm_vis_3nm\na,500,1\na,500,2\n",
                 "own.csv:11: the heights of 'a' do not rise"},
        BadTable{"BareWind", weather("# moderate_wind_over: 15\n", kWeatherColumns + "a,b,1,1,1\n"),
                 "own.csv:7: "},
        BadTable{"LimitsCross",
                 weather("# moderate_wind_over: 30kt\n# moderate_sea_from: 1m\n"
                         "# high_wind_over: 25kt\n# high_sea_over: 2m\n",
                         kWeatherColumns + "a,b,1,1,1\n"),
                 "high weather begins below moderate weather"},
        BadTable{"ColumnOrder",
                 weather(kLimits, "class,search_objects,light,high,moderate\na,b,1,1,1\n"),
                 "own.csv:11: the columns stand in another order"},
        BadTable{"MissingColumn", weather(kLimits, "class,search_objects,light,high\na,b,1,1\n"),
                 "own.csv:11: the column 'moderate' is missing"},
        BadTable{"MisspeltColumn",
                 weather(kLimits, "class,search_objects,light,moderat,high\na,b,1,1,1\n"),
                 "did you mean 'moderate'?"},
        BadTable{"TwoClasses", weather(kLimits, kWeatherColumns + "a,x; y,1,1,1\nb,Y,1,1,1\n"),
                 "own.csv:13: 'Y' stands in two classes"},
        BadTable{"Factor", weather(kLimits, kWeatherColumns + "a,x,1,1,90\n"),
                 "own.csv:12: the factor is 90, expected 0 to 3"}),
    [](const auto& bad) { return std::string(bad.param.name); });

}  // namespace
}  // namespace sweepwright::sweep
