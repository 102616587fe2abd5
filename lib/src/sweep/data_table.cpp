#include "sweep/data_table.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>

#include "sweep/name_matching.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::sweep {
namespace {

constexpr std::array<std::string_view, 6> kCommonKeys{"kind",   "title", "section",
                                                      "status", "units", "note"};
// In the order of TableStatus.
constexpr std::array<std::string_view, 3> kStatusNames{"seen", "from memory", "own work"};

Error wrong(std::string message, std::string hint = {}) {
  return Error(ErrorCode::input, std::move(message), std::move(hint));
}

/// The cells of one line of comma-separated values.
std::vector<std::string> parse_cells(std::string_view line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    if (c == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"') {
      cells.back() += line[++i];
    } else if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      cells.emplace_back();
    } else {
      cells.back() += c;
    }
  }
  if (quoted) throw wrong("a double quote is opened and not closed");
  for (std::string& cell : cells) cell = std::string(trimmed(cell));
  return cells;
}

}  // namespace

DataTable::DataTable(std::string_view text, std::string_view where) : where_(where) {
  if (!is_utf8(text)) throw wrong("the table is not UTF-8 text").at(where_);
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);  // byte order mark
  for (int number = 1; !text.empty(); ++number) {
    const std::size_t end = text.find('\n');
    const std::string_view line = trimmed(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    read_at(number, [&] {
      if (line.starts_with('#')) {
        add_setting(number, trimmed(line.substr(1)));
      } else if (!line.empty()) {
        add_row(number, parse_cells(line));
      }
    });
  }
  if (columns_.empty()) throw wrong("the table has no line of column names").at(where_);
  if (rows_.empty()) throw wrong("the table has no rows").at(where_);
  info_.title = setting("title").value;
  info_.section = setting("section").value;
  info_.units = setting("units").value;
  const DataSetting& status = setting("status");
  info_.status = static_cast<TableStatus>(read_at(
      status.line, [&] { return index_of_name(status.value, kStatusNames, "a table's status"); }));
  setting("kind");
}

void DataTable::add_setting(int line, std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos) {
    throw wrong(fmt::format("'# {}' is not of the form '# key: value'", printable(text)),
                "write remarks as '# note: ...'");
  }
  std::string key(trimmed(text.substr(0, colon)));
  std::string value(trimmed(text.substr(colon + 1)));
  if (key == "note") {
    info_.notes.push_back(std::move(value));
    return;
  }
  for (const DataSetting& earlier : settings_) {
    if (earlier.key == key) {
      throw wrong(fmt::format("'{}' is set twice, first on line {}", printable(key), earlier.line));
    }
  }
  settings_.push_back({line, std::move(key), std::move(value)});
}

void DataTable::add_row(int line, std::vector<std::string> cells) {
  if (columns_.empty()) {
    for (const std::string& column : cells) {
      if (std::count(cells.begin(), cells.end(), column) > 1) {
        throw wrong(fmt::format("the column '{}' stands twice", printable(column)));
      }
    }
    columns_ = std::move(cells);
    column_line_ = line;
    return;
  }
  if (cells.size() != columns_.size()) {
    throw wrong(fmt::format("found {} cells, expected {}: {}", cells.size(), columns_.size(),
                            fmt::join(columns_, ", ")),
                "put a cell that holds a comma in double quotes");
  }
  rows_.push_back({line, std::move(cells)});
}

const std::string& DataTable::kind() const {
  return setting("kind").value;
}

const DataSetting& DataTable::setting(std::string_view key) const {
  for (const DataSetting& candidate : settings_) {
    if (candidate.key == key && !candidate.value.empty()) return candidate;
  }
  throw wrong(fmt::format("the table has no '{}'", key), fmt::format("add a line '# {}: ...'", key))
      .at(where_);
}

void DataTable::allow_settings(std::span<const std::string_view> keys) const {
  std::vector<std::string_view> known(kCommonKeys.begin(), kCommonKeys.end());
  known.insert(known.end(), keys.begin(), keys.end());
  for (const DataSetting& candidate : settings_) {
    if (std::find(known.begin(), known.end(), candidate.key) == known.end()) {
      throw at_line(candidate.line,
                    wrong(fmt::format("'{}' is not a setting of a table of kind '{}'",
                                      printable(candidate.key), kind()),
                          spelling_hint(candidate.key, known)));
    }
  }
}

void DataTable::expect_columns(std::span<const std::string_view> columns) const {
  for (const std::string& column : columns_) {
    if (std::find(columns.begin(), columns.end(), column) == columns.end()) {
      throw at_line(column_line_,
                    wrong(fmt::format("the column '{}' is not known in a table of kind "
                                      "'{}'",
                                      printable(column), kind()),
                          spelling_hint(column, columns)));
    }
  }
  for (const std::string_view column : columns) {
    if (std::find(columns_.begin(), columns_.end(), column) == columns_.end()) {
      throw at_line(column_line_, wrong(fmt::format("the column '{}' is missing", column)));
    }
  }
  if (!std::equal(columns_.begin(), columns_.end(), columns.begin(), columns.end())) {
    throw at_line(column_line_,
                  wrong(fmt::format("the columns stand in another order, expected: {}",
                                    fmt::join(columns, ", "))));
  }
}

Error DataTable::at_line(int line, const Error& error) const {
  // Whatever was wrong with a value, to the caller it is a table that cannot be read.
  return Error(ErrorCode::input, error.message(), error.hint(), fmt::format("{}:{}", where_, line));
}

std::vector<std::string> parse_list(std::string_view text) {
  std::vector<std::string> parts;
  while (!text.empty()) {
    const std::size_t end = text.find(';');
    const std::string_view part = trimmed(text.substr(0, end));
    if (!part.empty()) parts.emplace_back(part);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return parts;
}

}  // namespace sweepwright::sweep
