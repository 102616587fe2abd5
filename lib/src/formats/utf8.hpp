// One character of UTF-8 at a time; private to the formats room.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {

/// Stands in outputs for bytes that are not UTF-8 or that the format cannot hold.
inline constexpr std::string_view kReplacement = "\xEF\xBF\xBD";  // U+FFFD

/// Bytes of the character at the front of `text`; 0 when they are not UTF-8 or there are none.
inline std::size_t character_length(std::string_view text) {
  for (std::size_t length = 1; length <= 4 && length <= text.size(); ++length) {
    if (is_utf8(text.substr(0, length))) return length;
  }
  return 0;
}

/// A path fit to stand in a message, whole: control characters and broken UTF-8 shown as `?`.
inline std::string shown_path(std::string_view path) {
  std::string shown;
  while (!path.empty()) {
    const std::size_t length = character_length(path);
    const bool control = static_cast<unsigned char>(path.front()) < 0x20 || path.front() == 0x7F;
    shown += length == 0 || control ? "?" : path.substr(0, length);
    path.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return shown;
}

}  // namespace sweepwright::formats
