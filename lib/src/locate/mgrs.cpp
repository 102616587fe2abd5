#include <fmt/format.h>

#include <GeographicLib/MGRS.hpp>
#include <GeographicLib/UTMUPS.hpp>

#include "locate/cursor.hpp"
#include "locate/readers.hpp"
#include "sweepwright/locate/notations.hpp"

namespace sweepwright::locate {
namespace {

constexpr std::string_view kSeparators = " -,;:/";
constexpr std::string_view kPolarZones = "ABYZ";
constexpr std::size_t kMostDigits = 11;  // a micrometre, the finest that GeographicLib reads

/// The parts of an MGRS name, wherever blanks stand.
struct Parts {
  std::string zone;     ///< digits; empty in the polar areas
  std::string letters;  ///< band and square, or the start of them
  std::string first_digits;
  std::string second_digits;
  std::size_t zone_at = 0, band_at = 0, square_at = 0, digits_at = 0, rest_at = 0;
};

Parts split(std::string_view text) {
  Cursor cursor(text);
  Parts parts;
  parts.zone_at = cursor.at();
  parts.zone = cursor.take_digits();
  cursor.skip(kSeparators);
  parts.band_at = parts.square_at = cursor.at();
  parts.letters = cursor.take_letters();
  cursor.skip(kSeparators);
  if (parts.letters.size() == 1) {
    parts.square_at = cursor.at();
    parts.letters += cursor.take_letters();
    cursor.skip(kSeparators);
  } else if (!parts.letters.empty()) {
    ++parts.square_at;
  }
  parts.digits_at = cursor.at();
  parts.first_digits = cursor.take_digits();
  cursor.skip(kSeparators);
  parts.second_digits = cursor.take_digits();
  parts.rest_at = cursor.at();
  return parts;
}

/// Three letters after one or two digits, or a polar zone alone.
bool has_shape(const Parts& parts, const PlainText& typed) {
  if (parts.letters.size() != 3 || parts.zone.size() > 2) return false;
  if (parts.zone.empty()) {
    return kPolarZones.find(parts.letters[0]) != std::string_view::npos &&
           parts.rest_at == typed.text().size();
  }
  // 19DEG and 18SEC are squares, 19 deg and 18sec are not: the units of angles are squares only
  // where they are typed as the standard does, close up and in capitals.
  const bool unit = parts.letters == "DEG" || parts.letters == "MIN" || parts.letters == "SEC";
  const bool close = parts.band_at == parts.zone.size() && parts.square_at == parts.band_at + 1;
  return !unit ||
         (close && !typed.typed_small(parts.band_at) && parts.rest_at == typed.text().size());
}

std::string size_in_words(std::size_t digits) {
  constexpr std::string_view kSizes[] = {"100 km", "10 km", "1 km", "100 m", "10 m", "1 m"};
  return digits < std::size(kSizes) ? fmt::format("middle of a {} square", kSizes[digits])
                                    : std::string("finer than 1 m");
}

/// False for a square that reaches over the edge of its zone, which has another name there.
bool is_named(std::string_view name, const Parts& parts, std::string_view digits) {
  const std::string_view pad = parts.zone.size() == 1 ? "0" : "";
  return name == fmt::format("{}{}{}{}", pad, parts.zone, parts.letters, digits);
}

}  // namespace

Attempt read_mgrs(const PlainText& typed, const Options&) {
  const std::string_view text = typed.text();
  const Parts parts = split(text);
  if (!has_shape(parts, typed)) return not_mine();

  if (!parts.zone.empty()) {
    const int zone = std::stoi(parts.zone);
    if (zone < 1 || zone > 60) {
      return wrong(typed, parts.zone_at, fmt::format("{} is not a zone from 1 to 60", zone));
    }
    if (std::string_view("CDEFGHJKLMNPQRSTUVWX").find(parts.letters[0]) == std::string_view::npos) {
      return wrong(
          typed, parts.band_at,
          fmt::format("'{}' is not a latitude band from C to X without I and O", parts.letters[0]));
    }
  }
  if (parts.letters[0] == 'X' && (parts.zone == "32" || parts.zone == "34" || parts.zone == "36")) {
    return wrong(typed, parts.zone_at, fmt::format("there is no zone {} in band X", parts.zone),
                 "round Svalbard there are the zones 31, 33, 35 and 37 only");
  }
  if (parts.rest_at != text.size()) {
    return wrong(typed, parts.rest_at, "more text after the digits of an MGRS position",
                 "write it like 18SUJ2339407395 or 18S UJ 23394 07395");
  }
  std::string digits = parts.first_digits + parts.second_digits;
  if (digits.size() % 2 != 0) {
    return wrong(
        typed, parts.rest_at,
        fmt::format("{} digits, where MGRS has as many of easting as of northing", digits.size()));
  }
  if (!parts.second_digits.empty() && parts.first_digits.size() != parts.second_digits.size()) {
    return wrong(typed, parts.rest_at - parts.second_digits.size(),
                 fmt::format("{} digits of easting but {} of northing", parts.first_digits.size(),
                             parts.second_digits.size()));
  }
  if (digits.size() > 2 * kMostDigits) {
    return wrong(typed, parts.digits_at, "more digits than MGRS has", "11 and 11 are the most");
  }
  const std::size_t half = digits.size() / 2;
  try {
    int zone = 0;
    int precision = 0;
    bool north = true;
    double easting = 0, northing = 0, latitude = 0, longitude = 0;
    GeographicLib::MGRS::Reverse(parts.zone + parts.letters + digits, zone, north, easting,
                                 northing, precision);
    GeographicLib::UTMUPS::Reverse(zone, north, easting, northing, latitude, longitude);
    const Position position = Position::at(Angle::degrees(latitude), Angle::degrees(longitude));
    std::string read_as = fmt::format("MGRS or USNG position{}, {}",
                                      zone == 0 ? " in a polar area" : "", size_in_words(half));
    const std::string usual = format_mgrs(position, static_cast<int>(half));
    if (!is_named(usual, parts, digits)) read_as += ", usually named " + usual;
    return understood(position, std::move(read_as));
  } catch (const GeographicLib::GeographicErr&) {
    if (parts.zone.empty() && digits.empty()) return not_mine();  // any three letters
    return wrong(typed, parts.square_at,
                 fmt::format("there is no square {} in {}{}", parts.letters.substr(1), parts.zone,
                             parts.letters[0]),
                 "check the two letters of the square, and zone and band before them");
  }
}

std::string format_mgrs(Position position, int digits) {
  if (digits < 0 || digits > static_cast<int>(kMostDigits)) {
    throw Error(ErrorCode::value, fmt::format("{} digits of an MGRS position", digits),
                "choose from 0 (100 km) to 5 (1 m) or 11");
  }
  const double latitude = position.latitude().degrees();
  int zone = 0;
  bool north = true;
  double easting = 0;
  double northing = 0;
  GeographicLib::UTMUPS::Forward(latitude, position.longitude().degrees(), zone, north, easting,
                                 northing);
  std::string name;
  GeographicLib::MGRS::Forward(zone, north, easting, northing, latitude, digits, name);
  return name;
}

}  // namespace sweepwright::locate
