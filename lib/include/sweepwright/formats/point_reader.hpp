// Reads points that a user defined: lines of a name and a position, for bearings such as ABC180017.
//
// Conventions: one point a line, the name first, then a comma or blanks, then the position in any
//   notation with one meaning; blank lines and lines that begin with `#` are passed over.
// Errors: Error(input) or Error(value) with the line: no position, a name that stands twice.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "sweepwright/position/position.hpp"

namespace sweepwright::formats {

using NamedPoints = std::map<std::string, Position, std::less<>>;

NamedPoints parse_points(std::string_view text);
/// The same from a file; errors have the path in front of their place.
NamedPoints read_points_file(const std::string& path);

}  // namespace sweepwright::formats
