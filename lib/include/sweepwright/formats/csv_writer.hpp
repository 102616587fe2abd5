// Writes a table as CSV that spreadsheets open and that cannot make them run anything.
//
// Conventions: a header row, commas, CR LF after each row, quotes where needed (RFC 4180), UTF-8
//   without byte order mark; no comments. A text that a spreadsheet would take for a formula
//   (first character = + - @, tab or carriage return) gets an apostrophe in front, unless it is a
//   plain number.
// Source: RFC 4180 section 2. Formula characters: OWASP, CSV Injection, from memory.
#pragma once

#include <span>
#include <string>

#include "sweepwright/formats/property.hpp"
#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

class CsvWriter {
 public:
  /// Writes the header row.
  CsvWriter(Sink& sink, std::span<const std::string> columns);
  /// Throws Error(value) when the number of cells is not that of the columns.
  void row(std::span<const PropertyValue> cells);

 private:
  Sink& sink_;
  std::size_t columns_;
  std::string line_;
};

}  // namespace sweepwright::formats
