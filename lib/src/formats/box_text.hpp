// The corners of boxes as text; private to the formats room.
//
// Problem: a million cells of a grid are written as boxes, row by row. Neighbours in a row have
// both
//   parallels and one meridian in common, so most limits were made into text for the box before.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "formats/number_text.hpp"
#include "formats/plot_pieces.hpp"

namespace sweepwright::formats {

/// A few characters, copied in a fixed number of bytes because that is quickest.
struct ShortText {
  static constexpr std::size_t kRoom = kDegreesRoom;
  std::array<char, kRoom> characters{};
  std::size_t size = 0;

  constexpr explicit ShortText(std::string_view text) : size(text.size()) {
    for (std::size_t i = 0; i < size; ++i) characters[i] = text[i];
  }
  explicit ShortText(Angle angle)
      : size(static_cast<std::size_t>(write_degrees(characters.data(), angle) -
                                      characters.data())) {}

  /// Needs kRoom bytes at `out`; returns the end of the text.
  char* put(char* out) const {
    for (std::size_t i = 0; i < kRoom; ++i) out[i] = characters[i];
    return out + size;
  }
};

class BoxText {
 public:
  /// Appends the corners, counterclockwise from the south-west, the first once more at the end:
  /// longitude, comma, latitude, and `between` between corners.
  void append_corners(std::string& out, const FlatBox& box, const ShortText& between);

 private:
  struct Limit {
    Angle angle;
    ShortText text;
    explicit Limit(Angle of) : angle(of), text(of) {}
    void set(Angle of) {
      if (of != angle) *this = Limit(of);
    }
  };
  Limit south_{Angle()};
  Limit north_{Angle()};
  Limit west_{Angle()};
  Limit east_{Angle()};
};

}  // namespace sweepwright::formats
