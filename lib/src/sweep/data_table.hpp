// The form that all data tables of this room share: settings, a line of columns, rows of cells.
//
//   # title: IAMSAR Manual Volume II, Mission Co-ordination
//   # note: any number of notes
//   search_object,height_ft
//   "Boat, open",500
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/base/error.hpp"
#include "sweepwright/sweep/tables.hpp"

namespace sweepwright::sweep {

struct DataRow {
  int line;
  std::vector<std::string> cells;  ///< as many as there are columns, blanks at the ends dropped
};

struct DataSetting {
  int line;
  std::string key;
  std::string value;
};

class DataTable {
 public:
  /// Throws Error (input) for text that does not have the form. `where` names it in messages.
  DataTable(std::string_view text, std::string_view where);

  const TableInfo& info() const { return info_; }
  const std::vector<std::string>& columns() const { return columns_; }
  const std::vector<DataRow>& rows() const { return rows_; }
  int column_line() const { return column_line_; }

  /// The kind of table: "sweep width".
  const std::string& kind() const;
  /// The value of a setting; throws Error when it is missing.
  const DataSetting& setting(std::string_view key) const;
  /// Throws Error when a setting is neither common to all tables nor among `keys`.
  void allow_settings(std::span<const std::string_view> keys) const;
  /// Throws Error when the columns are not exactly these.
  void expect_columns(std::span<const std::string_view> columns) const;

  /// The error, placed at a line of the text.
  Error at_line(int line, const Error& error) const;
  /// What `read` gives; its errors are placed at the line.
  template <typename Read>
  auto read_at(int line, Read read) const {
    try {
      return read();
    } catch (const Error& error) {
      throw at_line(line, error);
    }
  }

 private:
  void add_setting(int line, std::string_view text);
  void add_row(int line, std::vector<std::string> cells);

  std::string where_;
  TableInfo info_;
  std::vector<DataSetting> settings_;
  std::vector<std::string> columns_;
  int column_line_ = 0;
  std::vector<DataRow> rows_;
};

/// The parts of a list such as `fixed-wing; helicopter`; none for an empty cell.
std::vector<std::string> parse_list(std::string_view text);

}  // namespace sweepwright::sweep
