#include "sweepwright/locate/read_lines.hpp"

#include <fmt/format.h>

#include "sweepwright/base/text.hpp"

namespace sweepwright::locate {
namespace {

std::variant<Reading, Error> read_line(std::size_t line, std::string_view text,
                                       const Options& options) {
  try {
    return read_position(text, options);
  } catch (const Error& error) {
    return error.at(fmt::format("line {}", line));
  }
}

}  // namespace

LineCounts read_lines(const NextLine& next_line, const Options& options,
                      const std::function<void(const LineReading&)>& sink) {
  LineCounts counts;
  std::string text;
  for (std::size_t line = 1; next_line(text); ++line) {
    const std::string_view content = trimmed(text);
    if (content.empty() || content.front() == '#') continue;
    const LineReading reading{line, text, read_line(line, text, options)};
    ++(std::holds_alternative<Reading>(reading.result) ? counts.read : counts.failed);
    sink(reading);
  }
  return counts;
}

}  // namespace sweepwright::locate
