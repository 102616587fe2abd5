// XML read element by element, in constant memory, with nothing expanded and nothing fetched.
#pragma once

#include <functional>
#include <istream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sweepwright::formats {

struct XmlElement {
  std::string_view name;  ///< without its prefix
  std::vector<std::pair<std::string_view, std::string_view>> attributes;
  long line = 0;
  /// Empty when it is not there.
  std::string_view attribute(std::string_view wanted) const;
};

struct XmlEvents {
  std::function<void(const XmlElement&)> start;
  std::function<void(std::string_view name, long line)> end;
  /// Text comes in pieces.
  std::function<void(std::string_view text)> text;
};

/// Where and why the XML broke; empty when it was read to its end. Throws Error(input) for a
/// document type, whose entities could be made to fill the memory.
std::string read_xml(std::istream& stream, const XmlEvents& events);

}  // namespace sweepwright::formats
