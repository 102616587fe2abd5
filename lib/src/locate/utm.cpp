#include <fmt/format.h>

#include <GeographicLib/UTMUPS.hpp>
#include <charconv>
#include <cmath>
#include <optional>

#include "locate/cursor.hpp"
#include "locate/readers.hpp"
#include "sweepwright/locate/notations.hpp"

namespace sweepwright::locate {
namespace {

constexpr std::string_view kSeparators = " ,;:/|=-";
constexpr std::string_view kBands = "CDEFGHJKLMNPQRSTUVWX";

/// Easting and northing as written, and where.
struct Metres {
  double easting = 0, northing = 0;
  std::size_t easting_at = 0, northing_at = 0;
};

/// Takes one number of metres; `label` gets its E or N, before or after, or stays '\0'.
std::optional<double> take_metres(Cursor& cursor, char& label, std::size_t& at) {
  label = '\0';
  for (const std::string_view word : {"EASTING", "NORTHING", "E", "N"}) {
    if (label == '\0' && cursor.take_word(word)) label = word[0];
  }
  cursor.skip(kSeparators);
  at = cursor.at();
  const std::string_view digits = cursor.take_decimal();
  if (digits.empty()) return std::nullopt;
  const Cursor before_unit = cursor;
  cursor.skip(" ");
  if (label == '\0') {
    for (const std::string_view unit : {"ME", "MN", "E", "N"}) {
      if (label == '\0' && cursor.take_word(unit)) label = unit.back();
    }
    if (label == '\0' && cursor.take_word("M")) {
      cursor.skip(" ");
      if (cursor.take_word("E")) {
        label = 'E';
      } else if (cursor.take_word("N")) {
        label = 'N';
      }
    }
  } else {
    cursor.take_word("M");
  }
  if (label == '\0' && cursor.at() == before_unit.at()) cursor = before_unit;
  cursor.skip(kSeparators);
  return decimal_value(digits);
}

/// Easting and northing, in that order unless labels say otherwise.
std::variant<Metres, Attempt> take_pair(const PlainText& typed, Cursor& cursor) {
  char labels[2] = {};
  std::size_t places[2] = {};
  double values[2] = {};
  for (std::size_t i = 0; i < 2; ++i) {
    const std::optional<double> value = take_metres(cursor, labels[i], places[i]);
    if (!value) {
      return wrong(typed, places[i],
                   i == 0 ? "no easting in metres here" : "no northing in metres here",
                   "write it like 18 north 323394 4307396");
    }
    values[i] = *value;
  }
  if (labels[0] != '\0' && labels[0] == labels[1]) {
    return wrong(typed, places[1], fmt::format("two numbers marked {}", labels[0]));
  }
  const std::size_t e = labels[0] == 'N' || labels[1] == 'E' ? 1 : 0;
  return Metres{values[e], values[1 - e], places[e], places[1 - e]};
}

struct Limits {
  double least_easting, most_easting, least_northing, most_northing;
};
// Where MGRS letters reach; everything that a map or receiver shows lies inside. [GeographicLib
// MGRS.hpp]
constexpr Limits kUtmNorth{100000, 900000, 0, 9500000};
constexpr Limits kUtmSouth{100000, 900000, 1000000, 10000000};
constexpr Limits kUpsNorth{1300000, 2700000, 1300000, 2700000};
constexpr Limits kUpsSouth{800000, 3200000, 800000, 3200000};

std::optional<Attempt> out_of_limits(const PlainText& typed, const Metres& metres,
                                     const Limits& limits) {
  const auto outside = [](double v, double least, double most) { return v < least || v > most; };
  if (outside(metres.easting, limits.least_easting, limits.most_easting)) {
    return wrong(typed, metres.easting_at,
                 fmt::format("{} is not an easting from {} to {}", metres.easting,
                             limits.least_easting, limits.most_easting));
  }
  if (outside(metres.northing, limits.least_northing, limits.most_northing)) {
    return wrong(typed, metres.northing_at,
                 fmt::format("{} is not a northing from {} to {}", metres.northing,
                             limits.least_northing, limits.most_northing));
  }
  return std::nullopt;
}

Position to_position(int zone, bool north, const Metres& metres) {
  double latitude = 0;
  double longitude = 0;
  GeographicLib::UTMUPS::Reverse(zone, north, metres.easting, metres.northing, latitude, longitude);
  return Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
}

/// True when the latitude lies in the band, give or take half a minute for rounding.
bool in_band(Angle latitude, char band) {
  constexpr double kSlack = 0.5 / 60;
  const auto index = static_cast<double>(kBands.find(band));
  const double south = -80 + 8 * index;
  const double north = band == 'X' ? 84 : south + 8;
  return latitude.degrees() >= south - kSlack && latitude.degrees() <= north + kSlack;
}

/// A zone, and what followed it: a hemisphere word or a letter that may be a band.
struct Zone {
  int number = 0;
  std::size_t number_at = 0;
  char letter = '\0';  ///< 'n', 's' for a word; a capital for a letter; '\0' for nothing
  std::size_t letter_at = 0;
};

std::optional<Zone> take_zone(Cursor& cursor) {
  Zone zone;
  cursor.take_word("ZONE");
  cursor.skip(kSeparators);
  zone.number_at = cursor.at();
  const std::string_view digits = cursor.take_digits();
  if (digits.empty() || digits.size() > 2) return std::nullopt;
  std::from_chars(digits.data(), digits.data() + digits.size(), zone.number);
  cursor.skip(kSeparators);
  zone.letter_at = cursor.at();
  const Cursor before = cursor;
  const std::string_view word = cursor.take_letters();
  if (word == "NORTH" || word == "NORTHERN") {
    zone.letter = 'n';
  } else if (word == "SOUTH" || word == "SOUTHERN") {
    zone.letter = 's';
  } else if (word.size() == 1) {
    zone.letter = word[0];
  } else {
    cursor = before;
  }
  cursor.skip(kSeparators);
  cursor.take_word("HEMISPHERE");
  cursor.skip(kSeparators);
  return zone;
}

std::string words(const Zone& zone, bool north, std::string_view how) {
  return fmt::format("UTM zone {}, {} hemisphere{}", zone.number, north ? "northern" : "southern",
                     how);
}

/// S alone is the southern hemisphere or the band from 32 to 40 north.
Attempt read_letter_s(const PlainText& typed, const Zone& zone, const Metres& metres) {
  std::vector<PositionReading> readings;
  if (!out_of_limits(typed, metres, kUtmNorth)) {
    const Position position = to_position(zone.number, true, metres);
    if (in_band(position.latitude(), 'S')) {
      readings.push_back({position, words(zone, true, " (S taken as the latitude band)")});
    }
  }
  if (const auto failure = out_of_limits(typed, metres, kUtmSouth)) {
    if (readings.empty()) return *failure;
  } else {
    readings.push_back(
        {to_position(zone.number, false, metres), words(zone, false, " (S taken as south)")});
  }
  return {readings, true};
}

Attempt read_zone_position(const PlainText& typed, const Zone& zone, const Metres& metres) {
  if (zone.number < 1 || zone.number > 60) {
    return wrong(typed, zone.number_at, fmt::format("{} is not a zone from 1 to 60", zone.number));
  }
  if (zone.letter == '\0') {
    return wrong(typed, zone.letter_at, "a UTM zone without its hemisphere",
                 fmt::format("write {} north or {} south", zone.number, zone.number));
  }
  if (zone.letter == 'S') return read_letter_s(typed, zone, metres);
  const bool word = zone.letter == 'n' || zone.letter == 's';
  if (!word && kBands.find(zone.letter) == std::string_view::npos) {
    return wrong(
        typed, zone.letter_at,
        fmt::format("'{}' is not a hemisphere or a latitude band from C to X", zone.letter));
  }
  const bool north = zone.letter == 'n' || (!word && zone.letter >= 'N');
  if (const auto failure = out_of_limits(typed, metres, north ? kUtmNorth : kUtmSouth)) {
    return *failure;
  }
  const Position position = to_position(zone.number, north, metres);
  if (word || zone.letter == 'N') return understood(position, words(zone, north, ""));
  if (!in_band(position.latitude(), zone.letter)) {
    return wrong(
        typed, zone.letter_at,
        fmt::format("northing {} is not in latitude band {}", metres.northing, zone.letter),
        "check the band letter, or write north or south instead");
  }
  return understood(position, words(zone, north, fmt::format(" (latitude band {})", zone.letter)));
}

/// Metres are long numbers: this tells 18N 323394 from a latitude of 18 N.
bool metres_follow(Cursor cursor) {
  char label = '\0';
  std::size_t at = 0;
  const std::optional<double> metres = take_metres(cursor, label, at);
  return metres && *metres >= 10000;
}

}  // namespace

Attempt read_utm(const PlainText& typed, const Options&) {
  Cursor cursor(typed.text());
  const bool named = cursor.take_word("UTM");
  cursor.skip(kSeparators);
  std::optional<Zone> zone = take_zone(cursor);
  const bool zone_first = zone.has_value();
  if (!zone_first) {  // 323394E 4307396N zone 18S
    cursor = Cursor(typed.text());
    cursor.take_word("UTM");
    cursor.skip(kSeparators);
  }
  if (!named && !metres_follow(cursor)) return not_mine();
  const auto pair = take_pair(typed, cursor);
  if (const Attempt* failure = std::get_if<Attempt>(&pair)) {
    return named || zone_first ? *failure : not_mine();
  }
  if (!zone_first) {
    zone = take_zone(cursor);
    if (!zone && !named) return not_mine();
    if (!zone) return wrong(typed, cursor.at(), "no UTM zone", "write it first: 18 north");
  }
  if (!cursor.ended()) return wrong(typed, cursor.at(), "more text after a UTM position");
  return read_zone_position(typed, *zone, std::get<Metres>(pair));
}

Attempt read_ups(const PlainText& typed, const Options&) {
  Cursor cursor(typed.text());
  const bool named = cursor.take_word("UPS");
  cursor.skip(kSeparators);
  const std::size_t letter_at = cursor.at();
  const std::string_view word = cursor.take_letters();
  const bool polar = word == "A" || word == "B" || word == "Y" || word == "Z";
  const bool hemisphere = word == "NORTH" || word == "SOUTH" || word == "N" || word == "S";
  cursor.skip(kSeparators);
  if (!named && !(polar && metres_follow(cursor))) return not_mine();
  if (!polar && !hemisphere) {
    return wrong(typed, letter_at, "UPS without its hemisphere", "write UPS north or UPS south");
  }
  const bool north = word == "Y" || word == "Z" || word.front() == 'N';
  const auto pair = take_pair(typed, cursor);
  if (const Attempt* failure = std::get_if<Attempt>(&pair)) return *failure;
  if (!cursor.ended()) return wrong(typed, cursor.at(), "more text after a UPS position");
  const Metres& metres = std::get<Metres>(pair);
  if (const auto failure = out_of_limits(typed, metres, north ? kUpsNorth : kUpsSouth)) {
    return *failure;
  }
  if (polar) {
    const bool west = word == "A" || word == "Y";
    if (west != (metres.easting < 2000000)) {
      return wrong(typed, letter_at,
                   fmt::format("easting {} is not in zone {}", metres.easting, word),
                   "A and Y end at 2000000, B and Z begin there");
    }
  }
  return understood(to_position(0, north, metres),
                    fmt::format("UPS, {} polar area", north ? "northern" : "southern"));
}

std::string format_utm(Position position, int decimals) {
  if (decimals < 0 || decimals > 9) {
    throw Error(ErrorCode::value, fmt::format("{} decimal places of metres", decimals),
                "choose from 0 to 9");
  }
  int zone = 0;
  bool north = true;
  double easting = 0;
  double northing = 0;
  GeographicLib::UTMUPS::Forward(position.latitude().degrees(), position.longitude().degrees(),
                                 zone, north, easting, northing);
  const double scale = std::pow(10, decimals);
  const auto rounded = [&](double metres) { return std::round(metres * scale) / scale; };
  return fmt::format("{} {} {:.{}f}mE {:.{}f}mN", zone == 0 ? "UPS" : fmt::format("{}", zone),
                     north ? "north" : "south", rounded(easting), decimals, rounded(northing),
                     decimals);
}

}  // namespace sweepwright::locate
