// Which texts need no escaping; private to the formats room.
#pragma once

#include <array>
#include <string_view>

namespace sweepwright::formats {

/// The printable ASCII characters but for those that a format gives a meaning. A table, because a
/// million names are asked.
class PlainCharacters {
 public:
  constexpr explicit PlainCharacters(std::string_view special) {
    for (std::size_t byte = 0x20; byte < 0x7F; ++byte) plain_[byte] = true;
    for (const char c : special) plain_[static_cast<unsigned char>(c)] = false;
  }

  constexpr bool all_of(std::string_view text) const {
    for (const char c : text) {
      if (!plain_[static_cast<unsigned char>(c)]) return false;
    }
    return true;
  }

 private:
  std::array<bool, 256> plain_{};
};

}  // namespace sweepwright::formats
