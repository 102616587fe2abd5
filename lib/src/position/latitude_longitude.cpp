#include <fmt/format.h>

#include <algorithm>

#include "position/coordinate_groups.hpp"
#include "position/iso_6709.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright {
namespace {

using detail::Axis;
using detail::Comma;
using detail::Coordinate;
using detail::Form;
using detail::GroupPair;
using detail::Item;

/// Two coordinates read, in the order written.
struct Pair {
  Coordinate first;
  Coordinate second;
  bool latitude_first;

  const Coordinate& latitude() const { return latitude_first ? first : second; }
  const Coordinate& longitude() const { return latitude_first ? second : first; }
  Position position() const { return Position::at(latitude().angle, longitude().angle); }
};

std::variant<Pair, TextFailure> read_pair(const PlainText& text, const GroupPair& groups,
                                          bool latitude_first) {
  const Axis axes[2] = {latitude_first ? Axis::latitude : Axis::longitude,
                        latitude_first ? Axis::longitude : Axis::latitude};
  Pair pair{{}, {}, latitude_first};
  for (std::size_t i = 0; i < 2; ++i) {
    const auto read = detail::coordinate(text, groups.groups[i], axes[i]);
    if (const auto* failure = std::get_if<TextFailure>(&read)) return *failure;
    (i == 0 ? pair.first : pair.second) = std::get<Coordinate>(read);
  }
  return pair;
}

std::string in_words(const Pair& pair) {
  const std::string_view first = pair.latitude_first ? "latitude" : "longitude";
  const std::string_view second = pair.latitude_first ? "longitude" : "latitude";
  if (pair.first.form == pair.second.form) {
    return fmt::format("{} and {} in {}", first, second, detail::in_words(pair.first.form));
  }
  return fmt::format("{} in {}, {} in {}", first, detail::in_words(pair.first.form), second,
                     detail::in_words(pair.second.form));
}

/// True when `text` has the shape of `pattern`: 9 stands for a digit, N for N or S, E for E or W.
bool has_shape(std::string_view text, std::string_view pattern) {
  return std::equal(text.begin(), text.end(), pattern.begin(), pattern.end(), [](char c, char p) {
    if (p == '9') return is_ascii_digit(c);
    return p == 'N' ? c == 'N' || c == 'S' : c == 'E' || c == 'W';
  });
}

/// What else a pilot should know about how it was read.
std::string form_note(std::string_view text, const Pair& pair, Comma comma) {
  if (has_shape(text, "99N999E")) return " (ICAO 7-character form)";
  if (has_shape(text, "9999N99999E")) return " (ICAO 11-character form)";
  if (has_shape(text, "N99E999") || has_shape(text, "N9999E99999")) {
    return " (letters first; an ICAO flight plan has them after the digits)";
  }
  if (comma == Comma::decimal) return " with decimal commas";
  return pair.first.compact || pair.second.compact ? " (digits run together)" : "";
}

PositionReading reading(std::string_view text, const Pair& pair, Comma comma) {
  return {pair.position(), in_words(pair) + form_note(text, pair, comma)};
}

PositionOutcome read_in_either_order(const PlainText& text, const GroupPair& groups, Comma comma) {
  const auto latitude_first = read_pair(text, groups, true);
  const auto longitude_first = read_pair(text, groups, false);
  std::vector<PositionReading> readings;
  if (const Pair* pair = std::get_if<Pair>(&latitude_first)) {
    readings.push_back(reading(text.text(), *pair, comma));
    readings.back().read_as += ", latitude first";
  }
  if (const Pair* pair = std::get_if<Pair>(&longitude_first)) {
    PositionReading other = reading(text.text(), *pair, comma);
    other.read_as += readings.empty() ? fmt::format(", longitude first: {} cannot be a latitude",
                                                    pair->longitude().angle.degrees())
                                      : std::string(", longitude first");
    if (readings.empty() || other.position != readings[0].position) readings.push_back(other);
  }
  if (readings.empty()) return std::get<TextFailure>(latitude_first);
  return readings;
}

PositionOutcome read_with(const PlainText& text, Comma comma) {
  const auto items = detail::coordinate_items(text, comma);
  if (const auto* failure = std::get_if<TextFailure>(&items)) return *failure;
  const auto groups = detail::share_out(text, std::get<std::vector<Item>>(items));
  if (const auto* failure = std::get_if<TextFailure>(&groups)) return *failure;
  const GroupPair& pair = std::get<GroupPair>(groups);
  if (!pair.axes) return read_in_either_order(text, pair, comma);
  const auto read = read_pair(text, pair, (*pair.axes)[0] == Axis::latitude);
  if (const auto* failure = std::get_if<TextFailure>(&read)) return *failure;
  return std::vector{reading(text.text(), std::get<Pair>(read), comma)};
}

PositionOutcome read_iso_6709(const PlainText& text, const GroupPair& groups) {
  const auto read = read_pair(text, groups, true);
  if (const auto* failure = std::get_if<TextFailure>(&read)) return *failure;
  const Pair& pair = std::get<Pair>(read);
  return std::vector{PositionReading{pair.position(), in_words(pair) + " (ISO 6709)"}};
}

}  // namespace

PositionOutcome parse_latitude_longitude(const PlainText& typed) {
  const PlainText text = typed.unwrapped();
  if (const std::optional<GroupPair> iso = detail::iso_6709(text)) return read_iso_6709(text, *iso);
  PositionOutcome outcome = read_with(text, Comma::separator);
  if (!detail::has_comma_between_digits(text.text())) return outcome;

  PositionOutcome decimal = read_with(text, Comma::decimal);
  auto* readings = std::get_if<std::vector<PositionReading>>(&outcome);
  if (readings == nullptr) {
    const auto* failure = std::get_if<TextFailure>(&decimal);
    const bool nearer =
        failure != nullptr && failure->character < std::get<TextFailure>(outcome).character;
    return nearer ? outcome : decimal;
  }
  if (const auto* more = std::get_if<std::vector<PositionReading>>(&decimal)) {
    for (const PositionReading& other : *more) {
      const bool known =
          std::any_of(readings->begin(), readings->end(),
                      [&](const PositionReading& r) { return r.position == other.position; });
      if (!known) readings->push_back(other);
    }
  }
  return outcome;
}

}  // namespace sweepwright
