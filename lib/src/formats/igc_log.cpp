// IGC: flight recorders' files. HFDTE has the day, each B record a fix.
//
//   B HHMMSS DDMMmmm N DDDMMmmm E A PPPPP GGGGG
//     time   latitude  longitude  |  pressure and GNSS altitude in metres
//                                 A: 3D fix, V: 2D or no GNSS altitude
#include <fmt/format.h>

#include "formats/log_reading.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

/// Digits only: parse_number would take signs and points.
std::optional<double> digits(std::string_view text) {
  for (const char c : text) {
    if (!is_ascii_digit(c)) return std::nullopt;
  }
  return parse_number(text);
}

/// Degrees, minutes and thousandths of minutes, and a letter.
std::optional<double> angle(std::string_view text, std::size_t degree_digits,
                            std::string_view letters) {
  const auto degrees = digits(text.substr(0, degree_digits));
  const auto thousandths = digits(text.substr(degree_digits, 5));
  const char letter = text.back();
  if (!degrees || !thousandths || *thousandths >= 60000 ||
      letters.find(letter) == std::string_view::npos) {
    return std::nullopt;
  }
  const double value = *degrees + *thousandths / 60000;
  return letter == letters.front() ? value : -value;
}

/// An altitude may be negative: `-0012`.
std::optional<Length> altitude(std::string_view text) {
  const auto metres = parse_number(text);
  if (!metres) return std::nullopt;
  return Length::metres(*metres);
}

std::optional<std::chrono::year_month_day> day_of(std::string_view record) {
  std::size_t begin = 5;  // HFDTEddmmyy, and newer HFDTEDATE:ddmmyy,flight
  if (record.starts_with("HFDTEDATE")) begin = record.find_first_of("0123456789");
  if (begin == std::string_view::npos || record.size() < begin + 6) return std::nullopt;
  const auto day = digits(record.substr(begin, 2));
  const auto month = digits(record.substr(begin + 2, 2));
  const auto year = digits(record.substr(begin + 4, 2));
  if (!day || !month || !year) return std::nullopt;
  const int two = static_cast<int>(*year);
  const std::chrono::year_month_day found{std::chrono::year(two < 80 ? 2000 + two : 1900 + two),
                                          std::chrono::month(static_cast<unsigned>(*month)),
                                          std::chrono::day(static_cast<unsigned>(*day))};
  if (!found.ok()) return std::nullopt;
  return found;
}

}  // namespace

void read_igc_log(std::istream& stream, LogRows& rows) {
  DayClock clock;
  if (rows.options().day) clock.set_day(*rows.options().day);
  LogLines lines(stream);
  while (lines.next()) {
    const std::string_view line = lines.text();
    if (line.starts_with("HFDTE")) {
      if (const auto day = day_of(line)) clock.set_day(*day);
      continue;
    }
    if (line.starts_with("HFGIDGLIDERID:")) rows.name(line.substr(14));
    if (!line.starts_with('B')) continue;
    if (line.size() < 35) {
      rows.bad(lines.number(), "a B record is cut off");
      continue;
    }
    const auto time = parse_time_of_day(line.substr(1, 6));
    const auto place =
        position_of(angle(line.substr(7, 8), 2, "NS"), angle(line.substr(15, 9), 3, "EW"));
    if (!time || !place) {
      rows.bad(lines.number(), printable(line) + " is no B record");
      continue;
    }
    if (!clock.has_day()) {
      rows.bad(lines.number(), "no HFDTE record has said the day yet: state it");
      continue;
    }
    track::Fix fix{*place, clock.at(*time), {}};
    if (line[24] == 'A') {
      fix.altitude = altitude(line.substr(30, 5));
      rows.remark("altitudes are those of GNSS, above the ellipsoid: up to 100 m off sea level");
    } else {
      fix.altitude = altitude(line.substr(25, 5));
      rows.remark("fixes without GNSS altitude have the pressure altitude, of 1013.25 hPa");
    }
    rows.fix(fix, lines.number(), 0);
  }
  if (clock.rolled_over()) rows.remark("the log passes midnight: later times are of the next day");
}

}  // namespace sweepwright::formats
