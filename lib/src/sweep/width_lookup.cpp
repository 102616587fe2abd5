#include "sweep/width_lookup.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sweep/interpolation.hpp"
#include "sweep/name_matching.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::sweep {
namespace {

constexpr std::string_view kOwnWidth =
    "take the sweep width from your own manual and give it in place of the table";

Error outside(std::string message) {
  return Error(ErrorCode::impossible, std::move(message), std::string(kOwnWidth));
}

bool prints_nothing(const WidthRow& row) {
  return std::none_of(row.widths.begin(), row.widths.end(),
                      [](const auto& width) { return width.has_value(); });
}

/// The rows of one object, by rising height.
std::vector<const WidthRow*> rows_of(const WidthTable& table, const std::string& object) {
  std::vector<const WidthRow*> rows;
  for (const WidthRow& row : table.rows) {
    if (same_name(row.object, object)) rows.push_back(&row);
  }
  if (rows.empty()) {
    throw outside(fmt::format("there is no row for '{}' in {}, {}", printable(object),
                              table.info.title, table.info.section));
  }
  return rows;
}

/// Says so when the wanted place was moved to the table's edge.
void note_edge(std::string_view what, double wanted, double used, std::string_view unit,
               Working& working) {
  if (std::abs(wanted - used) <= 1e-9 * used) return;
  working.push_back(
      {std::string(what),
       fmt::format("{} {} counts as the edge of the table", format_value(wanted), unit),
       fmt::format("{} {}", format_value(used), unit), ""});
}

/// The wanted visibility between the table's columns. Better than the last counts as the last.
Bracket visibility_bracket(const WidthTable& table, Length visibility, Working& working) {
  std::vector<double> columns;
  for (const Length column : table.visibilities) columns.push_back(column.nautical_miles());
  const double wanted = visibility.nautical_miles();
  if (wanted > columns.back()) {
    working.push_back({"Visibility",
                       fmt::format("{} NM is above the last column of the table, which holds",
                                   format_value(wanted)),
                       format_value(columns.back()) + " NM", citation(table.info)});
    return {columns.size() - 1, columns.size() - 1, columns.back()};
  }
  const std::optional<Bracket> found = bracket(columns, wanted);
  if (!found) {
    throw outside(fmt::format("the visibility {} NM is below the first column of the table, {} NM",
                              format_value(wanted), format_value(columns.front())));
  }
  note_edge("Visibility", wanted, found->at, "NM", working);
  return *found;
}

/// Two rows of one object and the wanted height between them; twice the same when it has a row.
struct RowBracket {
  const WidthRow* low;
  const WidthRow* high;
  double feet;
};

/// Rows in which the manual prints nothing bound the table.
RowBracket height_bracket(const std::vector<const WidthRow*>& rows, Length height,
                          Working& working) {
  const std::string object = printable(rows.front()->object);
  std::vector<const WidthRow*> printed;
  std::vector<double> heights;
  for (const WidthRow* row : rows) {
    if (prints_nothing(*row)) continue;
    printed.push_back(row);
    heights.push_back(row->height->feet());
  }
  if (printed.empty()) {
    throw outside(fmt::format("the table prints no sweep width for '{}'", object));
  }
  const std::optional<Bracket> found = bracket(heights, height.feet());
  if (!found) {
    const bool unprinted = height.feet() > heights.back() && printed.size() < rows.size();
    throw outside(
        fmt::format("the height {} ft is outside the table: for '{}' it {} {} ft to {} ft",
                    format_value(height.feet()), object,
                    unprinted ? "prints sweep widths only from" : "runs from",
                    format_value(heights.front()), format_value(heights.back())));
  }
  note_edge("Height", height.feet(), found->at, "ft", working);
  return {printed[found->low], printed[found->high], found->at};
}

double printed_width(const WidthRow& row, std::size_t column) {
  const std::optional<Length>& width = row.widths[column];
  if (!width) {
    throw outside(fmt::format("the table prints no sweep width for '{}' at this visibility",
                              printable(row.object)));
  }
  return width->nautical_miles();
}

/// The width of one row at the wanted visibility, in NM.
Interpolated width_in_row(const WidthTable& table, const WidthRow& row, const Bracket& columns) {
  return interpolate(
      {table.visibilities[columns.low].nautical_miles(), printed_width(row, columns.low)},
      {table.visibilities[columns.high].nautical_miles(), printed_width(row, columns.high)},
      columns.at);
}

/// How the width of one row came about: read off, or interpolated.
std::string row_expression(const Interpolated& width, const Bracket& columns) {
  if (columns.low != columns.high) return width.expression;
  return fmt::format("read at visibility {} NM", format_value(columns.at));
}

WorkingLine width_line(std::string label, std::string expression, double width,
                       const WidthTable& table) {
  return {std::move(label), std::move(expression), format_value(width) + " NM",
          citation(table.info)};
}

std::string at_height(const WidthRow& row) {
  return fmt::format("Table width at {} ft", format_value(row.height->feet()));
}

/// The width at a height: that of one row, or interpolated between two.
double width_at_height(const WidthTable& table, const RowBracket& rows, const Bracket& columns,
                       Working& working) {
  const Interpolated low = width_in_row(table, *rows.low, columns);
  working.push_back(
      width_line(at_height(*rows.low), row_expression(low, columns), low.value, table));
  if (rows.low == rows.high) return low.value;
  const Interpolated high = width_in_row(table, *rows.high, columns);
  working.push_back(
      width_line(at_height(*rows.high), row_expression(high, columns), high.value, table));
  const Interpolated between = interpolate({rows.low->height->feet(), low.value},
                                           {rows.high->height->feet(), high.value}, rows.feet);
  working.push_back(width_line(fmt::format("Table width at {} ft", format_value(rows.feet)),
                               between.expression, between.value, table));
  return between.value;
}

}  // namespace

TableWidth look_up_width(const WidthTable& table, const TablePlace& place) {
  if (!place.visibility) {
    throw Error(ErrorCode::value, "the visibility is not given; the sweep width table needs it");
  }
  const std::vector<const WidthRow*> rows = rows_of(table, place.object);
  TableWidth result;
  const Bracket columns = visibility_bracket(table, *place.visibility, result.working);
  bool interpolated = columns.low != columns.high;
  if (!rows.front()->height) {
    const Interpolated width = width_in_row(table, *rows.front(), columns);
    result.width = Length::nautical_miles(width.value);
    result.working.push_back(
        width_line("Table width", row_expression(width, columns), width.value, table));
  } else {
    if (!place.height) {
      throw Error(ErrorCode::value,
                  "the search height is not given; the sweep width table needs it");
    }
    const RowBracket heights = height_bracket(rows, *place.height, result.working);
    result.width = Length::nautical_miles(width_at_height(table, heights, columns, result.working));
    interpolated = interpolated || heights.low != heights.high;
  }
  if (interpolated) {
    result.working.push_back(
        {"Interpolation", "linear between table values (the manual: \"Interpolate as necessary\")",
         "", "Joint Pub 3-50 Volume I, Appendix D.A"});
  }
  return result;
}

}  // namespace sweepwright::sweep
