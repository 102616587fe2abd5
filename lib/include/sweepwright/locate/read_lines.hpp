// Reads one position from each line of a text of any length.
//
// Problem: positions come in files of a million lines, some of them wrong. A bad line must not lose
//   the good ones, and memory must not grow with the file.
// Conventions: blank lines and lines that begin with `#` are passed over. Lines are counted from 1.
// Promises: P1 every other line gives exactly one LineReading, in order.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <variant>

#include "sweepwright/locate/read_position.hpp"

namespace sweepwright::locate {

struct LineReading {
  std::size_t line;
  std::string_view text;  ///< the line; it lives only during the call
  std::variant<Reading, Error> result;
};

/// Puts the next line into its argument; false at the end. Such as std::getline on a stream.
using NextLine = std::function<bool(std::string&)>;

/// Reads the text of a line: read_position() with the options of the day, or a reader for positions
/// of another reference system. Throws Error.
using LineReader = std::function<Reading(std::string_view)>;

struct LineCounts {
  std::size_t read = 0;
  std::size_t failed = 0;
  std::size_t ambiguous = 0;             ///< of those read: lines with other readings
  std::size_t first_ambiguous_line = 0;  ///< 0 when there is none
};

/// An error's where() is `line L: character N`.
LineCounts read_lines(const NextLine& next_line, const LineReader& reader,
                      const std::function<void(const LineReading&)>& sink);

}  // namespace sweepwright::locate
