// Published check values: CSV tables under tests/checks/<room>/, one registered test for each row.
//
// A table starts with `# source: ...` (title, section; seen or from memory) and may have more `#`
// lines; then a header row; then rows. Cells may be quoted. A test file lists the columns that it
// knows: a table with other columns is an error, so that a slip in a column name cannot pass.
#pragma once

#include <map>
#include <ostream>
#include <string>
#include <vector>

namespace sweepwright::test {

/// One row of a check table.
class CheckRow {
 public:
  CheckRow(std::string place, std::map<std::string, std::string> cells)
      : place_(std::move(place)), cells_(std::move(cells)) {}
  /// File and line, for messages and for the test's name.
  const std::string& place() const { return place_; }
  const std::string& text(const std::string& column) const;
  /// The cell as a number; throws when it is not one.
  double number(const std::string& column) const;
  bool empty(const std::string& column) const { return text(column).empty(); }

 private:
  std::string place_;
  std::map<std::string, std::string> cells_;
};

inline void PrintTo(const CheckRow& row, std::ostream* out) {
  *out << row.place();
}

/// Reads tests/checks/`table`. Throws when the file has no source line, no rows, or other columns
/// than `columns`.
std::vector<CheckRow> check_rows(const std::string& table, const std::vector<std::string>& columns);

/// Reads the whole of tests/checks/`name`.
std::string check_file(const std::string& name);

/// Names a row's test after its place: `gars_csv_line_12`. For INSTANTIATE_TEST_SUITE_P.
struct RowName {
  template <typename Info>
  std::string operator()(const Info& info) const {
    std::string name;
    for (const char c : info.param.place()) {
      const bool plain = (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
      name += plain ? c : '_';
    }
    return name;
  }
};

}  // namespace sweepwright::test
