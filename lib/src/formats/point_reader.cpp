#include "sweepwright/formats/point_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/input_file.hpp"
#include "sweepwright/locate/read_position.hpp"

namespace sweepwright::formats {
namespace {

void add_point(std::string_view line, NamedPoints& points) {
  const std::size_t end = line.find_first_of(", \t");
  const std::size_t start = line.find_first_not_of(", \t", std::min(end, line.size()));
  if (end == 0 || start == std::string_view::npos) {
    throw Error(ErrorCode::input,
                fmt::format("'{}' is a {}", printable(line),
                            end == 0 ? "position without a name" : "name without a position"),
                "write a name and a position, such as ABC 38-15.0N 117-02.5W");
  }
  const std::string name = to_upper_ascii(line.substr(0, end));
  locate::Options options;
  options.strict = true;
  const std::string_view position = trimmed(line.substr(start));
  if (!points.emplace(name, locate::read_position(position, options).position).second) {
    throw Error(ErrorCode::input, fmt::format("the point '{}' stands twice", printable(name)),
                "give each point one line");
  }
}

}  // namespace

NamedPoints parse_points(std::string_view text) {
  NamedPoints points;
  for (int number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    try {
      add_point(line, points);
    } catch (const Error& error) {
      throw error.at(fmt::format("line {}", number));
    }
  }
  return points;
}

NamedPoints read_points_file(const std::string& path) {
  const InputText file = read_text_file(path);
  try {
    return parse_points(file.text);
  } catch (const Error& error) {
    throw error.at(path);
  }
}

}  // namespace sweepwright::formats
