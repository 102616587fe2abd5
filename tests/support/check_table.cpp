#include "support/check_table.hpp"

#include <algorithm>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "support/files.hpp"

namespace sweepwright::test {
namespace {

std::vector<std::string> cells_of(const std::string& line) {
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
    } else if (c != '\r') {
      cells.back() += c;
    }
  }
  return cells;
}

}  // namespace

const std::string& CheckRow::text(const std::string& column) const {
  const auto found = cells_.find(column);
  if (found == cells_.end()) throw std::runtime_error(place_ + ": no column " + column);
  return found->second;
}

double CheckRow::number(const std::string& column) const {
  const std::string& cell = text(column);
  std::size_t used = 0;
  const double value = std::stod(cell, &used);
  if (used != cell.size()) throw std::runtime_error(place_ + ": not a number: " + cell);
  return value;
}

std::string check_file(const std::string& name) {
  const std::string path = (checks() / name).string();
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

std::vector<CheckRow> check_rows(const std::string& table,
                                 const std::vector<std::string>& columns) {
  std::istringstream file(check_file(table));
  std::vector<CheckRow> rows;
  std::vector<std::string> header;
  bool has_source = false;
  std::string line;
  for (int number = 1; std::getline(file, line); ++number) {
    if (line.rfind("# source:", 0) == 0) has_source = true;
    if (line.empty() || line[0] == '#') continue;
    const std::vector<std::string> cells = cells_of(line);
    const std::string place = table + " line " + std::to_string(number);
    if (header.empty()) {
      header = cells;
      if (!std::is_permutation(header.begin(), header.end(), columns.begin(), columns.end())) {
        throw std::runtime_error(place + ": the columns are not those that the test knows");
      }
      continue;
    }
    if (cells.size() != header.size()) throw std::runtime_error(place + ": wrong number of cells");
    std::map<std::string, std::string> named;
    for (std::size_t i = 0; i < cells.size(); ++i) named[header[i]] = cells[i];
    rows.emplace_back(place, named);
  }
  if (!has_source) throw std::runtime_error(table + ": no `# source:` line");
  if (rows.empty()) throw std::runtime_error(table + ": no rows");
  return rows;
}

}  // namespace sweepwright::test
