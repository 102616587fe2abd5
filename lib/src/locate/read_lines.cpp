#include "sweepwright/locate/read_lines.hpp"

#include <fmt/format.h>

#include "sweepwright/base/text.hpp"

namespace sweepwright::locate {
namespace {

std::variant<Reading, Error> read_line(std::size_t line, std::string_view text,
                                       const LineReader& reader) {
  try {
    return reader(text);
  } catch (const Error& error) {
    return error.at(fmt::format("line {}", line));
  }
}

void count(const LineReading& line, LineCounts& counts) {
  const Reading* reading = std::get_if<Reading>(&line.result);
  ++(reading != nullptr ? counts.read : counts.failed);
  if (reading == nullptr || reading->other_readings.empty()) return;
  if (counts.ambiguous == 0) counts.first_ambiguous_line = line.line;
  ++counts.ambiguous;
}

}  // namespace

LineCounts read_lines(const NextLine& next_line, const LineReader& reader,
                      const std::function<void(const LineReading&)>& sink) {
  LineCounts counts;
  std::string text;
  for (std::size_t line = 1; next_line(text); ++line) {
    const std::string_view content = trimmed(text);
    if (content.empty() || content.front() == '#') continue;
    const LineReading reading{line, text, read_line(line, text, reader)};
    count(reading, counts);
    sink(reading);
  }
  return counts;
}

}  // namespace sweepwright::locate
