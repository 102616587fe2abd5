// One latitude or longitude from the items that belong to it.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "position/coordinate_items.hpp"
#include "sweepwright/base/quantity.hpp"

namespace sweepwright::detail {

/// How exactly a coordinate was written.
enum class Form {
  whole_degrees,
  decimal_degrees,
  whole_minutes,
  decimal_minutes,
  seconds,
};

/// The form in words: "degrees and decimal minutes".
std::string_view in_words(Form form);

/// The items of one coordinate: numbers, and a hemisphere letter where one was written.
struct Group {
  std::vector<Item> numbers;
  std::optional<Item> letter;
};

struct Coordinate {
  Angle angle;
  Form form = Form::whole_degrees;
  bool compact = false;  ///< degrees and minutes run together, as in 3815N
};

/// Reads a group as a latitude or a longitude. `source` gives the place of failures.
std::variant<Coordinate, TextFailure> coordinate(const PlainText& source, const Group& group,
                                                 Axis axis);

/// Degrees, minutes and seconds from digits run together: DD, DDMM or DDMMSS for a latitude, DDD,
/// DDDMM or DDDMMSS for a longitude, with decimals after the last; nothing when the number of
/// digits fits neither.
std::optional<Coordinate> compact_coordinate(const Number& number, Axis axis);

}  // namespace sweepwright::detail
