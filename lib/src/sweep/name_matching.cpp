#include "sweep/name_matching.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::sweep {

std::string comparable(std::string_view name) {
  std::string result;
  for (const char c : to_lower_ascii(name)) {
    const bool gap = c == ' ' || c == '\t' || c == '-' || c == '_';
    if (!gap) {
      result += c;
    } else if (!result.empty() && result.back() != ' ') {
      result += ' ';
    }
  }
  return std::string(trimmed(result));
}

bool same_name(std::string_view a, std::string_view b) {
  return comparable(a) == comparable(b);
}

bool holds_name(const std::vector<std::string>& names, std::string_view name) {
  return std::any_of(names.begin(), names.end(),
                     [&](const std::string& candidate) { return same_name(candidate, name); });
}

std::size_t index_of_name(std::string_view text, std::span<const std::string_view> names,
                          std::string_view what) {
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (same_name(text, names[i])) return i;
  }
  throw Error(ErrorCode::value, fmt::format("'{}' is not {}", printable(text), what),
              spelling_hint(text, names));
}

}  // namespace sweepwright::sweep
