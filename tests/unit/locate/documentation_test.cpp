// Every example of docs/methods/reading-positions.md is what the reader and the writers do.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "support/files.hpp"
#include "sweepwright/locate/notations.hpp"
#include "sweepwright/locate/read_position.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::locate {
namespace {

using testing::HasSubstr;

struct Table {
  std::string third_column;  ///< the header of the third column tells what the table shows
  std::vector<std::vector<std::string>> rows;
};

std::string without_blanks_and_quotes(const std::string& cell) {
  const std::size_t first = cell.find_first_not_of(" `");
  if (first == std::string::npos) return {};
  return cell.substr(first, cell.find_last_not_of(" `") - first + 1);
}

std::vector<Table> tables_of_the_page() {
  std::istringstream page(
      test::read_file(test::repository() / "docs/methods/reading-positions.md"));
  std::vector<Table> tables;
  bool in_table = false;
  for (std::string line; std::getline(page, line);) {
    const bool row = line.starts_with("| ");
    if (!row || line.starts_with("| ---")) {
      in_table = in_table && row;
      continue;
    }
    std::vector<std::string> cells;
    std::istringstream columns(line.substr(1));
    for (std::string cell; std::getline(columns, cell, '|');) {
      cells.push_back(without_blanks_and_quotes(cell));
    }
    if (!in_table) tables.push_back({cells.at(2), {}});
    if (in_table) tables.back().rows.push_back(cells);
    in_table = true;
  }
  return tables;
}

Options options_of_the_page() {
  Options options;
  options.points = {{"ABC", Position::at(Angle::degrees(38.25), Angle::minutes(-7022.5))}};
  options.variation = [](Position) { return Angle::degrees(12); };
  return options;
}

void check_read(const std::vector<std::string>& row) {
  const Reading reading = read_position(row.at(0), options_of_the_page());
  EXPECT_EQ(format_position(reading.position), row.at(1));
  EXPECT_THAT(reading.read_as, HasSubstr(row.at(2)));
  EXPECT_TRUE(reading.other_readings.empty());
}

void check_ambiguous(const std::vector<std::string>& row) {
  const Reading reading = read_position(row.at(0), options_of_the_page());
  EXPECT_EQ(format_position(reading.position), row.at(1));
  ASSERT_FALSE(reading.other_readings.empty());
  EXPECT_EQ(format_position(reading.other_readings[0].position), row.at(2));
}

void check_refused(const std::vector<std::string>& row) {
  try {
    read_position(row.at(0), options_of_the_page());
    ADD_FAILURE() << "read";
  } catch (const Error& error) {
    EXPECT_EQ(error.where(), "character " + row.at(1));
    EXPECT_THAT(error.message(), HasSubstr(row.at(2)));
  }
}

void check_written(const std::vector<std::string>& row) {
  for (const Written& written : notations(options_of_the_page().points.at("ABC"))) {
    if (written.key == row.at(0)) {
      EXPECT_EQ(written.text, row.at(1));
    }
  }
}

TEST(Documentation, of_reading_positions_is_right) {
  int checked = 0;
  for (const Table& table : tables_of_the_page()) {
    for (const auto& row : table.rows) {
      SCOPED_TRACE(row.at(0));
      ++checked;
      if (table.third_column == "read as") {
        check_read(row);
      } else if (table.third_column == "other reading") {
        check_ambiguous(row);
      } else if (table.third_column == "message") {
        check_refused(row);
      } else if (table.third_column == "last place") {
        check_written(row);
      } else {
        ADD_FAILURE() << "a table that this test does not know: " << table.third_column;
      }
    }
  }
  EXPECT_EQ(checked, 56);
}

}  // namespace
}  // namespace sweepwright::locate
