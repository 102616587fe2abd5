#include "formats/csv_row.hpp"

#include <algorithm>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {

std::vector<std::string> csv_cells(std::string_view line, char delimiter) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    if (quoted && c == '"' && line.substr(i + 1).starts_with('"')) {
      cells.back() += c;
      ++i;
    } else if (c == '"' && (quoted || trimmed(cells.back()).empty())) {
      quoted = !quoted;
    } else if (c == delimiter && !quoted) {
      cells.emplace_back();
    } else {
      cells.back() += c;
    }
  }
  if (quoted) throw Error(ErrorCode::input, "a quote is not closed", "close it on the same line");
  for (std::string& cell : cells) cell = std::string(trimmed(cell));
  return cells;
}

char csv_delimiter(std::string_view header) {
  char best = ',';
  for (const char candidate : {';', '\t'}) {
    if (std::count(header.begin(), header.end(), candidate) >
        std::count(header.begin(), header.end(), best)) {
      best = candidate;
    }
  }
  return best;
}

}  // namespace sweepwright::formats
