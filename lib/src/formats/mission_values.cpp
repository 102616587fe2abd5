#include "formats/mission_values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/locate/read_position.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kShortText = 120;
constexpr std::size_t kLongText = 1000;

template <typename Quantity>
Reader<Quantity> quantity(Quantity (*parse)(std::string_view), std::string_view wanted, Least least,
                          std::string_view most) {
  return [=](const JsonCursor& cursor) {
    const std::string& text = cursor.text(wanted);
    const Quantity value = parse(text);
    const bool zero_will_do = least == Least::zero;
    if (value < Quantity{} || (value == Quantity{} && !zero_will_do)) {
      throw Error(ErrorCode::value, fmt::format("'{}' is {}", printable(text),
                                                zero_will_do ? "below 0" : "not above 0"));
    }
    if (value > parse(most)) {
      throw Error(ErrorCode::value, fmt::format("'{}' is more than {}", printable(text), most),
                  "check the number and its unit");
    }
    return value;
  };
}

std::size_t characters(std::string_view utf8) {
  const auto starts = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; };
  return static_cast<std::size_t>(std::count_if(utf8.begin(), utf8.end(), starts));
}

/// Characters that no sheet can show and no XML file may hold [XML 1.0, section 2.2].
bool is_plain_line(std::string_view text) {
  const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
  const auto holds = [&](std::string_view part) {
    return text.find(part) != std::string_view::npos;
  };
  return std::none_of(text.begin(), text.end(), control) && !holds("\xEF\xBF\xBE") &&
         !holds("\xEF\xBF\xBF");
}

}  // namespace

Reader<Length> length(Least least, std::string_view most) {
  return quantity(parse_length, "a length with its unit in quotes, such as \"12NM\"", least, most);
}

Reader<Speed> speed(Least least, std::string_view most) {
  return quantity(parse_speed, "a speed with its unit in quotes, such as \"90kt\"", least, most);
}

Reader<Duration> duration(Least least, std::string_view most) {
  return quantity(parse_duration, "a time with its unit in quotes, such as \"2h30\"", least, most);
}

Reader<double> number(double above, double most) {
  return [=](const JsonCursor& cursor) {
    const double value = cursor.number("a number without quotes, such as 0.5");
    if (!(value > above && value <= most)) {
      throw Error(ErrorCode::value,
                  fmt::format("{} is out of range", printable(cursor.value().text)),
                  fmt::format("write a number above {}, at most {}", above, most));
    }
    return value;
  };
}

Reader<int> whole_number(int least, int most) {
  return [=](const JsonCursor& cursor) {
    const double value = cursor.number("a whole number without quotes, such as 3");
    if (!(value >= least && value <= most) || value != std::floor(value)) {
      throw Error(ErrorCode::value,
                  fmt::format("{} will not do here", printable(cursor.value().text)),
                  fmt::format("write a whole number from {} to {}", least, most));
    }
    return static_cast<int>(value);
  };
}

bool yes_or_no(const JsonCursor& cursor) {
  if (cursor.value().kind != JsonKind::boolean) {
    throw Error(ErrorCode::input, fmt::format("found {}", shown(cursor.value())),
                "write true or false without quotes");
  }
  return cursor.value().text == "true";
}

Reader<std::string> line_of_text(std::size_t most) {
  return [=](const JsonCursor& cursor) {
    const std::string& text = cursor.text("a text in quotes");
    if (!is_plain_line(text)) {
      throw Error(ErrorCode::value,
                  fmt::format("the text '{}' holds a line end or another control character",
                              printable(text)),
                  "write it on one line");
    }
    if (trimmed(text).empty()) {
      throw Error(ErrorCode::value, "the text is blank",
                  "write it; a field that is not needed may be left out");
    }
    if (characters(text) > most) {
      throw Error(ErrorCode::value, fmt::format("the text has {} characters", characters(text)),
                  fmt::format("write at most {}, or the sheets have no room for it", most));
    }
    return std::string(trimmed(text));
  };
}

std::string short_text(const JsonCursor& cursor) {
  return line_of_text(kShortText)(cursor);
}

std::string long_text(const JsonCursor& cursor) {
  return line_of_text(kLongText)(cursor);
}

Reader<std::string> one_of(const std::vector<std::string_view>& choices, const std::string& what) {
  return [=](const JsonCursor& cursor) {
    const std::string& text = cursor.text(fmt::format("{} in quotes", what));
    if (std::find(choices.begin(), choices.end(), text) == choices.end()) {
      throw Error(ErrorCode::value, fmt::format("'{}' is not {}", printable(text), what),
                  spelling_hint(text, choices));
    }
    return text;
  };
}

TrueDirection true_direction(const JsonCursor& cursor) {
  const std::string& text = cursor.text("a true direction in quotes, such as \"035T\"");
  const std::string hint = "write the true direction, such as 035T";
  std::variant<TrueDirection, MagneticDirection> direction;
  try {
    direction = parse_direction(text);
  } catch (const Error& error) {
    throw Error(error.code(), error.message(), hint);  // its own hint offers magnetic ones
  }
  if (const auto* const known = std::get_if<TrueDirection>(&direction)) return *known;
  throw Error(ErrorCode::value, fmt::format("'{}' is a magnetic direction", printable(text)), hint);
}

Position position(const JsonCursor& cursor) {
  locate::Options options;
  options.strict = true;
  return locate::read_position(
             cursor.text("a position in quotes, such as \"38-15.00N 117-02.50W\""), options)
      .position;
}

LocalTime local_time(const JsonCursor& cursor) {
  return parse_local_time(cursor.text("a time in quotes, such as \"2026-07-14T12:30:00-06:00\""));
}

plan::NamedPlace named_place(const JsonCursor& cursor) {
  JsonObject in(cursor);
  plan::NamedPlace place;
  place.name = in.required("name", short_text);
  place.position = in.required("position", position);
  in.finish();
  return place;
}

}  // namespace sweepwright::formats
