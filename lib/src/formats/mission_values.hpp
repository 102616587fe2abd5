// Readers of the single values of a mission file, for JsonObject::required() and optional().
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "formats/json_cursor.hpp"
#include "sweepwright/base/direction.hpp"
#include "sweepwright/base/quantity.hpp"
#include "sweepwright/formats/local_time.hpp"
#include "sweepwright/plan/mission.hpp"

namespace sweepwright::formats {

template <typename T>
using Reader = std::function<T(const JsonCursor&)>;

/// The lower end of a range.
enum class Least { zero, above_zero };

/// Quantities with their unit; `most` is written as in the file: `60000ft`.
Reader<Length> length(Least least, std::string_view most);
Reader<Speed> speed(Least least, std::string_view most);
Reader<Duration> duration(Least least, std::string_view most);

/// Plain numbers above `above`, up to `most`.
Reader<double> number(double above, double most);
Reader<int> whole_number(int least, int most);

/// `true` or `false`, without quotes.
bool yes_or_no(const JsonCursor& cursor);

/// One line of text, not blank, without blanks at its ends, of at most so many characters.
Reader<std::string> line_of_text(std::size_t most);
/// For names and the like.
std::string short_text(const JsonCursor& cursor);
/// For descriptions and remarks.
std::string long_text(const JsonCursor& cursor);

/// One of a few fixed spellings. `what` names the value in messages: "a grid system".
Reader<std::string> one_of(const std::vector<std::string_view>& choices, const std::string& what);

TrueDirection true_direction(const JsonCursor& cursor);
Position position(const JsonCursor& cursor);
LocalTime local_time(const JsonCursor& cursor);

/// `{"name": ..., "position": ...}`
plan::NamedPlace named_place(const JsonCursor& cursor);

}  // namespace sweepwright::formats
