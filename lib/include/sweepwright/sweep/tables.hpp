// The published tables behind a sweep width, as values: widths, weather, terrain and speed factors.
//
// Problem: sweep widths come from tables in manuals. They are data, not code: the built-in ones are
//   files in lib/data, and a planner's own file of the same form replaces one of them.
// Conventions: a table is text: lines `# key: value` (kind, title, section, status, units, and what
//   the kind needs), a line of column names, rows of comma-separated cells; a cell with a comma
//   stands in double quotes. docs/methods/sweep-width.md shows each kind.
// Domain: unknown keys and columns, missing or doubled ones, rows of the wrong length and numbers
//   that make no sense are errors (ErrorCode::input) with the line.
// Promises:
//   P1 each cell of a built-in table equals the reference value of the same place
//      (tables_test.cpp).
//   P2 a table that stands in no manual we have read says so: its status is `from memory`.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/base/quantity.hpp"
#include "sweepwright/sweep/conditions.hpp"

namespace sweepwright::sweep {

/// How a table came into its file.
enum class TableStatus {
  seen,         ///< read in the source
  from_memory,  ///< recalled, not confirmed
  own_work,     ///< made for this project
};

/// Where a table stands.
struct TableInfo {
  std::string title;    ///< "IAMSAR Manual Volume II, Mission Co-ordination"
  std::string section;  ///< "Appendix N, Table N-9"
  TableStatus status = TableStatus::from_memory;
  std::string units;
  std::vector<std::string> notes;
};

/// Title and section, the row when one is named, and a warning when the table is from memory.
std::string citation(const TableInfo& info, std::string_view row = {});

/// Uncorrected sweep widths of one object at one height, one for each visibility of its table.
struct WidthRow {
  std::string object;
  std::optional<Length> height;               ///< none in a table without heights
  std::vector<std::optional<Length>> widths;  ///< empty where the manual prints nothing
};

struct WidthTable {
  TableInfo info;
  Surface surface{};
  std::vector<Platform> platforms;
  std::vector<Length> visibilities;  ///< rising
  std::vector<WidthRow> rows;        ///< an object's rows by rising height
};

/// Weather factors of one class of objects.
struct WeatherRow {
  std::string class_name;
  std::vector<std::string> objects;  ///< names of the search objects in the class
  double light = 1;
  double moderate = 1;
  double high = 1;
};

/// Moderate and high begin at a wind or at a sea, whichever is worse.
struct WeatherTable {
  TableInfo info;
  std::string key;  ///< by which a planner chooses the table
  Speed moderate_wind_over;
  Length moderate_sea_from;
  Speed high_wind_over;
  Length high_sea_over;
  std::vector<WeatherRow> rows;
};

struct TerrainRow {
  std::string object;
  double hilly = 1;
  double mountainous = 1;
  double dense_vegetation = 1;
};

struct TerrainTable {
  TableInfo info;
  std::vector<TerrainRow> rows;
};

struct SpeedFactor {
  Speed speed;
  double factor = 1;
};

/// Speed factors of one class of objects, by rising speed. The first holds for lower speeds too.
struct SpeedRow {
  std::string class_name;
  std::vector<std::string> objects;
  std::vector<SpeedFactor> fixed_wing;
  std::vector<SpeedFactor> helicopter;
};

struct SpeedTable {
  TableInfo info;
  std::vector<SpeedRow> rows;
};

/// Short names of a search object.
struct ObjectAliases {
  std::string object;
  std::vector<std::string> aliases;
};

/// All tables that sweep_width() looks into.
struct Tables {
  std::vector<WidthTable> widths;
  std::vector<WeatherTable> weather;
  TerrainTable terrain;
  SpeedTable speed;
  std::vector<ObjectAliases> aliases;
};

/// The tables of lib/data.
const Tables& built_in_tables();

/// `tables` with the table that `text` holds put in. A width table takes the place of those of the
/// same surface for its platforms, a weather table that of the same key, a terrain or speed table
/// that of its kind; short names are added to. `where` names the text in messages: a file name.
Tables with_table(Tables tables, std::string_view text, std::string_view where);

/// The keys of the weather tables, in order.
std::vector<std::string> weather_table_keys(const Tables& tables);

}  // namespace sweepwright::sweep
