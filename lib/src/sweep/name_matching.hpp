// How the room compares names: letter case does not count; blanks, `-` and `_` are the same.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sweepwright::sweep {

/// The form in which names are compared: small letters, words joined by single blanks.
std::string comparable(std::string_view name);

bool same_name(std::string_view a, std::string_view b);
bool holds_name(const std::vector<std::string>& names, std::string_view name);

/// The place of `text` among the names of an enumeration. Throws Error (value) that calls the
/// wanted thing `what` ("a platform") and offers the nearest spelling.
std::size_t index_of_name(std::string_view text, std::span<const std::string_view> names,
                          std::string_view what);

}  // namespace sweepwright::sweep
