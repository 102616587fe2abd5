#include "sweepwright/sweep/working.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sweep/interpolation.hpp"

namespace sweepwright::sweep {
namespace {

/// The number of `source` in the list under the working; adds it when it is new.
std::size_t number_of(const std::string& source, std::vector<std::string>& sources) {
  const auto found = std::find(sources.begin(), sources.end(), source);
  const auto index = static_cast<std::size_t>(found - sources.begin());
  if (found == sources.end()) sources.push_back(source);
  return index + 1;
}

}  // namespace

std::string working_length(Length length) {
  constexpr Length kShort = Length::nautical_miles(0.2);
  return length < kShort ? fmt::format("{:.1f} m", length.metres())
                         : fmt::format("{} NM", format_value(length.nautical_miles()));
}

std::string format_working(const Working& working) {
  std::size_t label_width = 0;
  std::size_t expression_width = 0;
  std::size_t value_width = 0;
  for (const WorkingLine& line : working) {
    label_width = std::max(label_width, line.label.size());
    // A remark has no value to line up.
    if (!line.value.empty()) {
      expression_width = std::max(expression_width, line.expression.size());
    }
    value_width = std::max(value_width, line.value.size());
  }

  std::string text;
  std::vector<std::string> sources;
  for (const WorkingLine& line : working) {
    std::string row = fmt::format("{:<{}}  ", line.label, label_width);
    if (line.value.empty()) {
      row += line.expression;
    } else {
      row += fmt::format("{:<{}}  = {:<{}}", line.expression, expression_width, line.value,
                         value_width);
    }
    if (!line.source.empty()) row += fmt::format("  [{}]", number_of(line.source, sources));
    row.erase(row.find_last_not_of(' ') + 1);
    text += row + '\n';
  }
  for (std::size_t i = 0; i < sources.size(); ++i) {
    text += fmt::format("[{}] {}\n", i + 1, sources[i]);
  }
  return text;
}

}  // namespace sweepwright::sweep
