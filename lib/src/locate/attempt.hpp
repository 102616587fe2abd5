// What one notation makes of a text.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "sweepwright/locate/read_position.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::locate {

struct Attempt {
  PositionOutcome outcome;
  /// The text has the shape of this notation, so a failure here is the one to tell.
  bool claimed = false;

  const std::vector<PositionReading>* readings() const {
    return std::get_if<std::vector<PositionReading>>(&outcome);
  }
  const TextFailure* failure() const { return std::get_if<TextFailure>(&outcome); }
};

inline Attempt understood(Position position, std::string read_as) {
  return {std::vector{PositionReading{position, std::move(read_as)}}, true};
}

/// The text has nothing to do with this notation.
inline Attempt not_mine() {
  return {TextFailure{}, false};
}

/// The text is of this notation, but wrong at `index` of the plain text.
inline Attempt wrong(const PlainText& text, std::size_t index, std::string message,
                     std::string hint = {}) {
  return {TextFailure{text.character(index), std::move(message), std::move(hint)}, true};
}

/// Signature of every reader. The text has no blanks at its ends and is not empty.
using Reader = Attempt (*)(const PlainText& text, const Options& options);

}  // namespace sweepwright::locate
