// A colour of the screen and of print: red, green, blue, and how much it hides what lies below.
#pragma once

#include <cstdint>

namespace sweepwright::formats {

struct Colour {
  std::uint8_t red = 0;
  std::uint8_t green = 0;
  std::uint8_t blue = 0;
  std::uint8_t opacity = 255;  ///< 0 cannot be seen, 255 hides what is below
  bool operator==(const Colour&) const = default;
};

}  // namespace sweepwright::formats
