// CSV with one fix a line: columns in any order, known by their names in the first line.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <vector>

#include "formats/csv_row.hpp"
#include "formats/log_reading.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

enum Column { kTime, kDate, kLatitude, kLongitude, kAltitude, kColumns };

struct Known {
  Column column;
  std::string_view name;
};

/// Names as devices and spreadsheets write them, without blanks, underscores and units.
constexpr std::array kKnown{
    Known{kTime, "time"},          Known{kTime, "timestamp"},  Known{kTime, "datetime"},
    Known{kTime, "utc"},           Known{kTime, "timeutc"},    Known{kTime, "utctime"},
    Known{kTime, "when"},          Known{kDate, "date"},       Known{kDate, "day"},
    Known{kLatitude, "latitude"},  Known{kLatitude, "lat"},    Known{kLongitude, "longitude"},
    Known{kLongitude, "lon"},      Known{kLongitude, "lng"},   Known{kLongitude, "long"},
    Known{kAltitude, "altitude"},  Known{kAltitude, "alt"},    Known{kAltitude, "ele"},
    Known{kAltitude, "elevation"}, Known{kAltitude, "height"}, Known{kLatitude, "y"},
    Known{kLongitude, "x"},
};

struct Heading {
  std::string name;  ///< small letters and digits, without its unit
  std::string unit;  ///< `ft`, `m` or empty
};

Heading heading_of(std::string_view text) {
  std::string plain;
  for (const char c : to_lower_ascii(text)) {
    if (is_ascii_letter(c) || is_ascii_digit(c)) plain += c;
    if (c == '_' || c == '(' || c == '[' || c == ' ' || c == '/') plain += ' ';
  }
  Heading heading;
  while (!plain.empty()) {
    const std::size_t end = plain.find(' ');
    const std::string word = plain.substr(0, end);
    plain.erase(0, end == std::string::npos ? plain.size() : end + 1);
    const bool unit = word == "ft" || word == "feet" || word == "m" || word == "metres" ||
                      word == "meters" || word == "deg" || word == "msl" || word == "amsl";
    if (!unit) heading.name += word;
    if (word == "ft" || word == "feet") heading.unit = "ft";
    if (word == "m" || word == "metres" || word == "meters") heading.unit = "m";
  }
  return heading;
}

class CsvLog {
 public:
  CsvLog(LogRows& rows, std::string_view header) : rows_(rows), separator_(csv_delimiter(header)) {
    columns_.fill(kNone);
    const std::vector<std::string> cells = csv_cells(header, separator_);
    name_columns(cells);
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const Heading heading = heading_of(cells[i]);
      for (const Known& known : kKnown) {
        std::size_t& column = columns_[known.column];
        if (column != kNone || heading.name != known.name) continue;
        column = i;
        if (known.column == kAltitude) altitude_unit_ = heading.unit;
      }
    }
    if (columns_[kLatitude] == kNone || columns_[kLongitude] == kNone) {
      throw Error(
          ErrorCode::input,
          fmt::format("the first line names no latitude and longitude: {}", printable(header)),
          "name the columns in the first line: time, latitude, longitude, altitude_m", "line 1");
    }
    if (rows.options().day) clock_.set_day(*rows.options().day);
  }

  void line(std::string_view text, long row) {
    if (trimmed(text).empty()) return;
    std::vector<std::string> cells;
    try {
      cells = csv_cells(text, separator_);
    } catch (const Error& error) {
      return rows_.bad(row, error.message());
    }
    const auto cell = [&](Column column) -> std::string_view {
      const std::size_t i = columns_[column];
      return i < cells.size() ? trimmed(cells[i]) : std::string_view();
    };
    const auto place = position(cell(kLatitude), cell(kLongitude));
    if (!place) {
      return rows_.bad(row, fmt::format("latitude {} longitude {} is no place",
                                        printable(cell(kLatitude)), printable(cell(kLongitude))));
    }
    track::Fix fix{*place, {}, {}};
    if (columns_[kTime] != kNone || columns_[kDate] != kNone) {
      fix.time = time(cell(kTime), cell(kDate));
      if (!fix.time && !cell(kTime).empty()) {
        return rows_.bad(row, printable(cell(kTime)) + " is no time, or its day is not known");
      }
    }
    if (const auto altitude = number(cell(kAltitude))) {
      if (altitude_unit_.empty()) rows_.remark("altitudes without a unit were read as metres");
      fix.altitude = altitude_unit_ == "ft" ? Length::feet(*altitude) : Length::metres(*altitude);
    }
    rows_.fix(fix, row, 0);
  }

  void finish() {
    if (clock_.rolled_over()) {
      rows_.remark("the log passes midnight: later times are of the next day");
    }
  }

 private:
  static constexpr std::size_t kNone = static_cast<std::size_t>(-1);

  /// Columns that the user named.
  void name_columns(const std::vector<std::string>& cells) {
    for (const auto& [meaning, wanted] : rows_.options().columns) {
      const auto known = std::find_if(kKnown.begin(), kKnown.end(),
                                      [&](const Known& entry) { return entry.name == meaning; });
      const auto cell = std::find_if(cells.begin(), cells.end(), [&](const std::string& text) {
        return trimmed(text) == wanted;
      });
      if (known == kKnown.end()) {
        throw Error(ErrorCode::value, "a column of a log cannot mean " + printable(meaning),
                    "choose one of: time, date, latitude, longitude, altitude");
      }
      if (cell == cells.end()) {
        throw Error(ErrorCode::input, "there is no column " + printable(wanted),
                    "write the column's name as the first line has it", "line 1");
      }
      columns_[known->column] = static_cast<std::size_t>(cell - cells.begin());
      if (known->column == kAltitude) altitude_unit_ = heading_of(*cell).unit;
    }
  }

  /// A decimal comma is one where the comma separates nothing.
  std::optional<double> number(std::string_view text) const {
    std::string plain(text);
    if (separator_ != ',') std::replace(plain.begin(), plain.end(), ',', '.');
    return parse_number(plain);
  }

  std::optional<Position> position(std::string_view latitude, std::string_view longitude) const {
    const auto north = number(latitude);
    const auto east = number(longitude);
    if (north || east) return position_of(north, east);
    const auto outcome =
        parse_latitude_longitude(PlainText(std::string(latitude) + " " + std::string(longitude)));
    const auto* readings = std::get_if<std::vector<PositionReading>>(&outcome);
    if (readings == nullptr || readings->size() != 1) return std::nullopt;
    return readings->front().position;
  }

  std::optional<Instant> time(std::string_view text, std::string_view date) {
    const std::chrono::minutes offset = rows_.options().offset_from_utc;
    bool no_zone = false;
    std::optional<Instant> found = parse_instant(text, offset, no_zone);
    if (!found && !date.empty()) {
      found = parse_instant(std::string(date) + "T" + std::string(text), offset, no_zone);
    }
    if (!found && date.empty()) {
      if (const auto time_of_day = parse_time_of_day(text)) {
        if (!clock_.has_day()) return std::nullopt;
        no_zone = true;
        found = clock_.at(*time_of_day) - offset;
      } else if (const auto seconds = parse_number(text);
                 seconds && *seconds >= 0 && *seconds < 1e13) {
        // Since 1970: milliseconds where seconds would be the year 5000.
        const bool thousandths = *seconds > 1e11;
        rows_.remark(thousandths ? "times were read as milliseconds since 1970"
                                 : "times were read as seconds since 1970");
        found = Instant(std::chrono::round<std::chrono::milliseconds>(
            Duration(thousandths ? *seconds / 1000 : *seconds)));
      }
    }
    if (no_zone) {
      rows_.remark(fmt::format("times without a zone were read as UTC{:+} min", offset.count()));
    }
    return found;
  }

  LogRows& rows_;
  char separator_;
  std::array<std::size_t, kColumns> columns_{};
  std::string altitude_unit_;
  DayClock clock_;
};

}  // namespace

void read_csv_log(std::istream& stream, LogRows& rows) {
  LogLines lines(stream);
  do {
    if (!lines.next()) return;
  } while (trimmed(lines.text()).empty() || lines.text().starts_with('#'));
  CsvLog log(rows, lines.text());
  while (lines.next()) log.line(lines.text(), lines.number());
  log.finish();
}

}  // namespace sweepwright::formats
