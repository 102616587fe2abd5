#include "formats/cell_rows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

#include "formats/csv_row.hpp"
#include "formats/geojson_area.hpp"
#include "formats/json_document.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::formats {
namespace {

/// A belief has some thirty values for each cell: this is a hundred thousand cells.
constexpr std::size_t kMostValues = 4'000'000;

std::string on_line(int line) {
  return fmt::format("line {}", line);
}

bool is_known_system(std::string_view system) {
  const auto names = grid::systems();
  return std::find(names.begin(), names.end(), system) != names.end();
}

double number(const JsonValue& value, std::string_view name) {
  if (value.kind != JsonKind::number) {
    throw Error(ErrorCode::input,
                fmt::format("{} where '{}' needs a number", shown(value), printable(name)),
                "write a number from 0 to 1, without quotes", on_line(value.line));
  }
  return value.number;
}

std::optional<double> optional_number(const JsonValue& object, std::string_view name) {
  const JsonValue* const value = member(object, name);
  if (value == nullptr || value->kind == JsonKind::null) return std::nullopt;
  return number(*value, name);
}

/// The row of an object; none when it has no `cell`.
std::optional<CellRow> row_of(const JsonValue& object, std::string_view wanted) {
  const JsonValue* const cell = member(object, "cell");
  if (cell == nullptr) return std::nullopt;
  if (cell->kind != JsonKind::text || trimmed(cell->text).empty()) {
    throw Error(ErrorCode::input,
                fmt::format("{} where the name of a cell is wanted", shown(*cell)),
                "write the name in quotes", on_line(cell->line));
  }
  const JsonValue* const value = member(object, wanted);
  if (value == nullptr) {
    throw Error(ErrorCode::input,
                fmt::format("the cell '{}' has no '{}'", printable(cell->text), wanted), {},
                on_line(object.line));
  }
  CellRow row;
  row.name = std::string(trimmed(cell->text));
  row.value = number(*value, wanted);
  row.place = on_line(cell->line);
  if (const JsonValue* const system = member(object, "system");
      system != nullptr && system->kind == JsonKind::text) {
    row.system = to_lower_ascii(trimmed(system->text));
  }
  return row;
}

CellRows rows_of_features(const JsonValue& features, std::string_view wanted) {
  CellRows found;
  for (const JsonValue& feature : features.items) {
    const JsonValue* const properties = member(feature, "properties");
    if (properties == nullptr) continue;
    std::optional<CellRow> row = row_of(*properties, wanted);
    if (!row) continue;
    const JsonValue* const geometry = member(feature, "geometry");
    if (!is_known_system(row->system) && geometry != nullptr &&
        geometry->kind == JsonKind::object) {
      row->drawn = read_geojson_area(*geometry).region;
    }
    found.rows.push_back(std::move(*row));
  }
  return found;
}

CellRows rows_of_list(const JsonValue& cells, std::string_view wanted) {
  CellRows found;
  for (const JsonValue& cell : cells.items) {
    std::optional<CellRow> row = row_of(cell, wanted);
    if (!row) {
      throw Error(ErrorCode::input, "an entry of 'cells' has no 'cell'",
                  "write objects with \"cell\" and the number", on_line(cell.line));
    }
    found.rows.push_back(std::move(*row));
  }
  return found;
}

CellRows rows_of_json(std::string_view text, std::string_view wanted) {
  const JsonValue root = parse_json(text, kMostValues);
  const JsonValue* const features = member(root, "features");
  const JsonValue* const cells = member(root, "cells");
  const JsonValue* const list = features != nullptr ? features : cells;
  if (list == nullptr || list->kind != JsonKind::array) {
    throw Error(ErrorCode::input, "the file has neither a list 'features' nor a list 'cells'",
                "give GeoJSON, a CSV table or JSON as this program writes them");
  }
  CellRows found =
      features != nullptr ? rows_of_features(*list, wanted) : rows_of_list(*list, wanted);
  found.outside = optional_number(root, "outside");
  found.cumulative_success = optional_number(root, "cumulative_pos");
  return found;
}

/// Which columns of a table hold what.
struct Columns {
  std::size_t count = 0;
  std::size_t cell = 0;
  std::size_t value = 0;
  std::optional<std::size_t> system;
};

Columns columns(const std::vector<std::string>& header, std::string_view wanted) {
  const auto place = [&](std::string_view name) -> std::optional<std::size_t> {
    std::optional<std::size_t> found;
    for (std::size_t i = 0; i < header.size(); ++i) {
      if (to_lower_ascii(header[i]) != name) continue;
      if (found) {
        throw Error(ErrorCode::input, fmt::format("the table has two columns '{}'", name),
                    "keep one of them");
      }
      found = i;
    }
    return found;
  };
  const auto needed = [&](std::string_view name) {
    const auto found = place(name);
    if (found) return *found;
    const std::vector<std::string_view> names(header.begin(), header.end());
    throw Error(ErrorCode::input, fmt::format("the table has no column '{}'", name),
                nearest_spellings(name, names).empty()
                    ? fmt::format("its first line names the columns: cell,{}", wanted)
                    : spelling_hint(name, names));
  };
  return {header.size(), needed("cell"), needed(wanted), place("system")};
}

CellRow row_of(const std::vector<std::string>& cells, const Columns& columns,
               std::string_view wanted) {
  if (cells.size() != columns.count) {
    throw Error(ErrorCode::input, fmt::format("the line has {} cells, and the table {} columns",
                                              cells.size(), columns.count));
  }
  CellRow row;
  row.name = cells[columns.cell];
  if (row.name.empty()) throw Error(ErrorCode::input, "the cell has no name");
  row.value = parse_number(cells[columns.value], wanted);
  if (columns.system) row.system = to_lower_ascii(cells[*columns.system]);
  return row;
}

CellRows rows_of_table(std::string_view text, std::string_view wanted) {
  if (!is_utf8(text)) throw Error(ErrorCode::input, "the file is not in UTF-8");
  CellRows found;
  std::optional<Columns> known;
  for (int number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    try {
      const std::vector<std::string> cells = csv_cells(line);
      if (!known) {
        known = columns(cells, wanted);
        continue;
      }
      found.rows.push_back(row_of(cells, *known, wanted));
      found.rows.back().place = on_line(number);
    } catch (const Error& error) {
      throw error.at(on_line(number));
    }
  }
  return found;
}

void refuse_doubles(const std::vector<CellRow>& rows) {
  std::map<std::pair<std::string_view, std::string>, const CellRow*> seen;
  for (const CellRow& row : rows) {
    const auto [first, is_new] =
        seen.emplace(std::pair(std::string_view(row.system), to_upper_ascii(row.name)), &row);
    if (is_new) continue;
    throw Error(ErrorCode::input,
                fmt::format("the cell '{}' stands twice, first on {}", printable(row.name),
                            first->second->place),
                "keep one of them", row.place);
  }
}

}  // namespace

CellRows read_cell_rows(std::string_view text, std::string_view wanted) {
  const std::string_view content = trimmed(text);
  if (content.empty()) throw Error(ErrorCode::input, "the file is empty");
  const bool json = content.starts_with('{') || content.starts_with('[');
  CellRows found = json ? rows_of_json(text, wanted) : rows_of_table(text, wanted);
  if (found.rows.empty()) {
    throw Error(ErrorCode::input, "the file has no cells",
                fmt::format("each cell needs 'cell' and '{}'", wanted));
  }
  refuse_doubles(found.rows);
  return found;
}

}  // namespace sweepwright::formats
