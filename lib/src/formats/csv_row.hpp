// Cells of one line of a table; private to the formats room.
//
// Source: RFC 4180 section 2, a row on one line.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sweepwright::formats {

/// Blanks round a cell are dropped. Throws Error(input) for a quote that is not closed.
std::vector<std::string> csv_cells(std::string_view line, char delimiter = ',');

/// The delimiter of a line of column names: the one of comma, semicolon and tab that it has most
/// of; comma when it has none.
char csv_delimiter(std::string_view header);

}  // namespace sweepwright::formats
