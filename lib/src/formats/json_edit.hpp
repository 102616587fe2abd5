// Changes single members of a JSON text and leaves every other byte as it stands; private to the
// formats room.
//
// Problem: a planner's mission file has its own order, indents and fields; the next period's file
// is
//   to be that file, with a few members changed.
// Conventions: a path names members from the outermost object inward; `0`, `1`, ... are the places
//   of a list's items.
// Domain: texts that parse_json() reads; what is no such text gives an Error(input) or is left as
// it
//   stands.
// Source: RFC 8259.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sweepwright::formats {

using JsonPath = std::vector<std::string>;

/// The text with the value of a member replaced by `json`. A last member that is missing is added
/// at the end of its object; Throws Error(input) where the way to it is missing.
std::string with_member(std::string_view text, const JsonPath& path, std::string_view json);

/// The text without a member of an object, which may be missing.
std::string without_member(std::string_view text, const JsonPath& path);

}  // namespace sweepwright::formats
