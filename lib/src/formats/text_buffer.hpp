// Gathers small pieces of text and hands them to a sink in large ones; private to the formats room.
#pragma once

#include <string>

#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

class TextBuffer {
 public:
  explicit TextBuffer(Sink& sink) : sink_(sink) { text.reserve(kEnough + kEnough / 8); }

  /// Call after each piece of output, to keep the memory constant.
  void hand_over_if_large() {
    if (text.size() >= kEnough) hand_over();
  }
  void hand_over() {
    sink_.write(text);
    text.clear();
  }

  std::string text;  ///< append here

 private:
  // Systems write a file fastest in pieces of about this size.
  static constexpr std::size_t kEnough = 1024 * 1024;
  Sink& sink_;
};

}  // namespace sweepwright::formats
