#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "locate/bearing.hpp"
#include "locate/cursor.hpp"
#include "locate/readers.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/locate/notations.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::locate {
namespace {

constexpr std::string_view kFrom = "FROM";
constexpr std::string_view kSeparators = " ,;:/@=";
constexpr std::array<std::string_view, 12> kFillers{"BEARING",   "BRG",      "RADIAL", "TRACK",
                                                    "DIRECTION", "DISTANCE", "DIST",   "DST",
                                                    "RANGE",     "AT",       "ON",     "AND"};
constexpr std::array<std::string_view, 9> kLengthUnits{"NM", "NMI",  "KM",     "MI",    "SM",
                                                       "FT", "FEET", "METRES", "METERS"};
// Half way round the Earth: further is nearer the other way.
constexpr Length kFurthest = Length::nautical_miles(10800);
constexpr std::string_view kExample = "FROM 38-15.0N 117-02.5W 045T 12NM";

/// A number and the letters after it.
struct Quantity {
  std::string_view digits;
  std::string_view unit;
  std::size_t at = 0;
  bool small_unit = false;  ///< typed in small letters

  double value() const { return decimal_value(digits); }
  bool is_true() const { return unit == "T" || unit == "TRUE"; }
  bool is_magnetic() const { return unit == "M" || unit == "MAG" || unit == "MAGNETIC"; }
  bool is_bearing() const { return (is_true() || is_magnetic()) && value() <= 360; }
  /// 500m is metres; 12M may be miles or a magnetic bearing.
  bool is_length() const {
    if (unit == "M") return small_unit;
    return std::find(kLengthUnits.begin(), kLengthUnits.end(), unit) != kLengthUnits.end();
  }
  std::variant<TrueDirection, MagneticDirection> bearing() const {
    if (is_true()) return TrueDirection::degrees(value());
    return MagneticDirection::degrees(value());
  }
  std::string unit_text() const { return unit == "NM" ? "NM" : to_lower_ascii(unit); }
  Length length() const {
    return parse_length(std::string(digits) + (unit == "METERS" ? "metres" : unit_text()));
  }
};

/// A piece of the plain text, and where it begins there.
struct Piece {
  std::size_t begin;
  std::string_view text;
};

/// Takes a number and its unit; no digits when the next thing is no number.
Quantity take_quantity(const PlainText& typed, std::size_t offset, Cursor& cursor) {
  Quantity quantity;
  quantity.at = offset + cursor.at();
  quantity.digits = cursor.take_decimal();
  cursor.skip({&kDegreeSign, 1});
  cursor.skip(" ");
  if (cursor.take_word("DEGREES") || cursor.take_word("DEG")) cursor.skip(" ");
  quantity.small_unit = typed.typed_small(offset + cursor.at());
  quantity.unit = cursor.take_letters();
  return quantity;
}

/// The two quantities that the whole piece consists of.
std::optional<std::array<Quantity, 2>> two_quantities(const PlainText& typed, Piece piece) {
  Cursor cursor(piece.text);
  std::array<Quantity, 2> pair;
  for (Quantity& quantity : pair) {
    cursor.skip(kSeparators);
    for (const std::string_view filler : kFillers) {
      if (cursor.take_word(filler)) cursor.skip(kSeparators);
    }
    quantity = take_quantity(typed, piece.begin, cursor);
    if (quantity.digits.empty()) return std::nullopt;
  }
  cursor.skip(kSeparators);
  return cursor.ended() ? std::optional(pair) : std::nullopt;
}

/// A bearing and a distance in either order; both orders when `030M 200M` allows both.
struct Leg {
  Quantity bearing;
  Quantity distance;
};
std::vector<Leg> legs_of(const std::array<Quantity, 2>& pair) {
  std::vector<Leg> legs;
  if (pair[0].is_bearing() && pair[1].is_length()) legs.push_back({pair[0], pair[1]});
  if (pair[1].is_bearing() && pair[0].is_length()) legs.push_back({pair[1], pair[0]});
  return legs;
}

/// The text cut into the place to start from and the quantities.
struct Parts {
  PlainText place;
  Piece quantities;
};

/// The shortest end of the text that is a bearing and a distance begins here.
std::optional<std::size_t> trailing_quantities(const PlainText& typed) {
  const std::string_view text = typed.text();
  for (std::size_t at = text.size(); at-- > 1;) {
    const bool begins = is_ascii_digit(text[at]) && kSeparators.find(text[at - 1]) != text.npos;
    if (!begins) continue;
    const auto pair = two_quantities(typed, {at, text.substr(at)});
    if (pair && !legs_of(*pair).empty()) return at;
  }
  return std::nullopt;
}

/// The text without separators and fillers at its end, which belong to the quantities.
std::string_view without_fillers(std::string_view text) {
  const auto trim = [&] { text = text.substr(0, text.find_last_not_of(kSeparators) + 1); };
  trim();
  for (const std::string_view filler : kFillers) {
    if (!text.ends_with(filler)) continue;
    const std::string_view before = text.substr(0, text.size() - filler.size());
    if (!before.empty() && before.back() != ' ') continue;
    text = before;
    trim();
  }
  return text;
}

/// The place of the word FROM; npos when there is none.
std::size_t find_from(std::string_view text) {
  const auto parted = [&](std::size_t at) {
    return at >= text.size() || kSeparators.find(text[at]) != std::string_view::npos;
  };
  const std::size_t at = text.find(kFrom);
  if (at == std::string_view::npos || !parted(at + kFrom.size())) return std::string_view::npos;
  return at == 0 || parted(at - 1) ? at : std::string_view::npos;
}

/// Says what is missing in the end of `FROM ... `, or in what stands before `FROM`.
Attempt diagnose(const PlainText& typed, Piece piece) {
  const std::string_view text = piece.text;
  const std::string hint = fmt::format("write it like {}", kExample);
  // Look at the last two numbers with what follows them.
  std::vector<Quantity> found;
  for (std::size_t at = text.size(); at-- > 0 && found.size() < 2;) {
    const bool begins = is_ascii_digit(text[at]) &&
                        (at == 0 || kSeparators.find(text[at - 1]) != std::string_view::npos);
    if (!begins) continue;
    Cursor cursor(text.substr(at));
    found.insert(found.begin(), take_quantity(typed, piece.begin + at, cursor));
  }
  for (const Quantity& quantity : found) {
    if ((quantity.is_true() || quantity.is_magnetic()) && quantity.value() > 360) {
      return wrong(typed, quantity.at,
                   fmt::format("{} is not a bearing up to 360", quantity.digits));
    }
  }
  const Quantity last = found.empty() ? Quantity() : found.back();
  if (last.unit == "M" && !last.is_length() && found.size() == 2) {
    return wrong(typed, last.at, fmt::format("{}M may be metres, miles or magnetic", last.digits),
                 "write metres as a small m, miles as NM or mi");
  }
  if (!last.unit.empty() && !last.is_length() && !last.is_true() && !last.is_magnetic()) {
    return wrong(typed, last.at, fmt::format("'{}' is not a unit of length", last.unit),
                 "use NM, km, mi, m or ft");
  }
  if (!last.is_length()) {
    return wrong(typed, piece.begin + text.size(), "no distance with its unit, such as 12NM", hint);
  }
  if (found.size() == 2 && found[0].unit.empty()) {
    return wrong(
        typed, found[0].at, fmt::format("the bearing {} without its north", found[0].digits),
        fmt::format("write {}T for true, {}M for magnetic", found[0].digits, found[0].digits));
  }
  return wrong(typed, found.back().at, "no bearing with its north, such as 045T", hint);
}

/// No bearing or distance needs more digits, and a double could not hold many more.
std::optional<Attempt> too_many_digits(const PlainText& typed,
                                       const std::optional<std::array<Quantity, 2>>& pair) {
  constexpr std::size_t kMostDigits = 15;
  if (!pair) return std::nullopt;
  for (const Quantity& quantity : *pair) {
    if (quantity.digits.size() > kMostDigits) {
      return wrong(typed, quantity.at, fmt::format("a number of more than {} digits", kMostDigits));
    }
  }
  return std::nullopt;
}

Attempt read_from(const PlainText& typed, const Parts& parts, const Options& options) {
  const auto pair = two_quantities(typed, parts.quantities);
  if (const auto failure = too_many_digits(typed, pair)) return *failure;
  const std::vector<Leg> legs = pair ? legs_of(*pair) : std::vector<Leg>();
  if (legs.empty()) return diagnose(typed, parts.quantities);
  const PlainText place = parts.place.unwrapped();
  if (place.text().empty()) {
    return wrong(place, 0, "no position to start from", fmt::format("write it like {}", kExample));
  }
  const PositionOutcome starts = read_any(place, options, false);
  if (const auto* failure = std::get_if<TextFailure>(&starts)) return {*failure, true};

  std::vector<PositionReading> readings;
  for (const PositionReading& start : std::get<std::vector<PositionReading>>(starts)) {
    for (const Leg& leg : legs) {
      if (leg.distance.length() > kFurthest) {
        return wrong(typed, leg.distance.at, "a distance of more than half way round the Earth");
      }
      const auto bearing = to_true(leg.bearing.bearing(), start.position, options);
      if (!bearing) {
        return wrong(typed, leg.bearing.at, std::string(kNoVariation),
                     std::string(kNoVariationHint));
      }
      readings.push_back(
          {travel(start.position, bearing->direction, leg.distance.length()).position,
           fmt::format("{} {} on {} from {} ({})", leg.distance.digits, leg.distance.unit_text(),
                       bearing->in_words, format_position(start.position), start.read_as)});
    }
  }
  return {readings, true};
}

}  // namespace

std::optional<TrueBearing> to_true(std::variant<TrueDirection, MagneticDirection> bearing,
                                   Position at, const Options& options) {
  if (const auto* given = std::get_if<TrueDirection>(&bearing)) {
    return TrueBearing{*given, fmt::format("{:05.1f} true", given->degrees())};
  }
  if (!options.variation) return std::nullopt;
  const MagneticDirection magnetic = std::get<MagneticDirection>(bearing);
  const Angle variation = options.variation(at);
  const TrueDirection direction(magnetic.angle() + variation);
  return TrueBearing{direction,
                     fmt::format("{:05.1f} magnetic (variation {:.1f} {}, {:05.1f} true)",
                                 magnetic.degrees(), std::abs(variation.degrees()),
                                 variation.degrees() < 0 ? 'W' : 'E', direction.degrees())};
}

Attempt read_bearing_distance(const PlainText& typed, const Options& options) {
  const std::string_view text = typed.text();
  const std::size_t from = find_from(text);
  if (from != std::string_view::npos && from > 0) {  // 045T 12NM FROM ABC
    return read_from(typed, {typed.part(from + kFrom.size()), {0, text.substr(0, from)}}, options);
  }
  const std::size_t place_at =
      from == 0 ? std::min(text.find_first_not_of(kSeparators, kFrom.size()), text.size()) : 0;
  const std::optional<std::size_t> at = trailing_quantities(typed);
  if (!at && from == 0) return diagnose(typed, {place_at, text.substr(place_at)});
  if (!at) return not_mine();
  const std::size_t place_end =
      place_at + without_fillers(text.substr(place_at, *at - place_at)).size();
  return read_from(typed, {typed.part(place_at, place_end - place_at), {*at, text.substr(*at)}},
                   options);
}

std::string format_bearing_distance(Position from, Position position) {
  const GeodesicLine line = geodesic(from, position);
  // Whole tenths, so that 359.96 becomes 000.0 and not 360.0.
  const long tenths = std::lround(line.start_track.degrees() * 10) % 3600;
  return fmt::format("FROM {} {:03}.{}T {:.2f}NM", format_position(from), tenths / 10, tenths % 10,
                     line.length.nautical_miles());
}

}  // namespace sweepwright::locate
