// The numbers, hemisphere letters and labels of a text, with what stands between them.
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "sweepwright/position/plain_text.hpp"

namespace sweepwright::detail {

/// What stands between two numbers, one bit each.
enum Separator : unsigned {
  kSpace = 1,
  kDash = 2,
  kColon = 4,
  kDot = 8,
  kComma = 16,
  kSlash = 32,
  kSemicolon = 64,
  kBar = 128,
};

enum class Unit { unmarked, degree, minute, second };

enum class Axis { latitude, longitude };

struct Number {
  double value = 0;  ///< without its sign
  int whole_digits = 0;
  bool has_decimals = false;
  bool decimal_comma = false;  ///< its decimals follow a comma
  char sign = '\0';            ///< '+', '-' or none
  Unit unit = Unit::unmarked;
  bool letter_mark = false;  ///< the unit is the letter D or M, as in 38D15M
  unsigned before = 0;       ///< separators since the number before
};

struct Hemisphere {
  char letter = 'N';
  bool maybe_second_mark = false;  ///< an S that may stand for seconds, as in 38D15M00S
};

struct Label {
  Axis axis = Axis::latitude;
};

struct Item {
  std::size_t at = 0;  ///< index in the plain text
  std::variant<Number, Hemisphere, Label> is;

  const Number* number() const { return std::get_if<Number>(&is); }
  const Hemisphere* hemisphere() const { return std::get_if<Hemisphere>(&is); }
  const Label* label() const { return std::get_if<Label>(&is); }
};

/// A comma between two digits: a decimal sign, or a separator.
enum class Comma { separator, decimal };

std::variant<std::vector<Item>, TextFailure> coordinate_items(const PlainText& text, Comma comma);

/// True when a comma stands between two digits.
bool has_comma_between_digits(std::string_view text);

}  // namespace sweepwright::detail
