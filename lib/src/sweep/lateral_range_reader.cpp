// A planner's lateral range curve, in the form that all tables of the room share.
#include <fmt/format.h>

#include <array>

#include "sweep/data_table.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/sweep/lateral_range.hpp"

namespace sweepwright::sweep {
namespace {

constexpr std::string_view kKind = "lateral range";

struct DistanceColumn {
  std::string_view name;
  Length unit;
};
constexpr std::array<DistanceColumn, 4> kDistanceColumns{
    {{"distance_nm", Length::nautical_miles(1)},
     {"distance_km", Length::kilometres(1)},
     {"distance_m", Length::metres(1)},
     {"distance_ft", Length::feet(1)}}};

/// The column of distances, whose name says their unit.
DistanceColumn distance_column(const DataTable& data) {
  for (const DistanceColumn& column : kDistanceColumns) {
    if (data.columns().front() == column.name) return column;
  }
  std::vector<std::string_view> names;
  for (const DistanceColumn& column : kDistanceColumns) names.push_back(column.name);
  throw data.at_line(data.column_line(),
                     Error(ErrorCode::input,
                           fmt::format("the first column is '{}', expected the distance from the "
                                       "track line with its unit",
                                       printable(data.columns().front())),
                           spelling_hint(data.columns().front(), names)));
}

}  // namespace

LateralRangeTable parse_lateral_range(std::string_view text, std::string_view where) {
  const DataTable data(text, where);
  if (data.kind() != kKind) {
    throw data.at_line(
        data.setting("kind").line,
        Error(ErrorCode::input, fmt::format("found a table of kind '{}', expected '{}'",
                                            printable(data.kind()), kKind)));
  }
  data.allow_settings(std::array<std::string_view, 1>{"sides"});
  const DistanceColumn column = distance_column(data);
  data.expect_columns(std::array<std::string_view, 2>{column.name, "probability"});
  const DataSetting& setting = data.setting("sides");
  const Sides sides = data.read_at(setting.line, [&] { return parse_sides(setting.value); });
  std::vector<LateralRangePoint> points;
  for (const DataRow& row : data.rows()) {
    points.push_back(data.read_at(row.line, [&] {
      return LateralRangePoint{parse_number(row.cells[0], "the distance") * column.unit,
                               Probability(parse_number(row.cells[1], "the probability"))};
    }));
  }
  return data.read_at(data.rows().front().line, [&] {
    return LateralRangeTable{data.info(), LateralRangeCurve(points, sides)};
  });
}

}  // namespace sweepwright::sweep
