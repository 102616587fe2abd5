// KML 2.2: gx:Track with `when` and `coord` side by side, LineString with its coordinates.
#include <fmt/format.h>

#include <deque>

#include "formats/log_reading.hpp"
#include "formats/xml_stream.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kLongestText = 200;

/// `longitude separator latitude separator altitude`; the altitude may be left out.
std::optional<track::Fix> fix_of(std::string_view text, char separator) {
  std::vector<std::string_view> parts;
  while (parts.size() < 4) {
    const std::size_t end = text.find(separator);
    parts.push_back(text.substr(0, end));
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  if (parts.size() < 2 || parts.size() > 3) return std::nullopt;
  const auto place = position_of(parse_number(parts[1]), parse_number(parts[0]));
  if (!place) return std::nullopt;
  track::Fix fix{*place, {}, {}};
  if (parts.size() == 3) {
    if (const auto metres = parse_number(parts[2])) fix.altitude = Length::metres(*metres);
  }
  return fix;
}

class KmlLog {
 public:
  explicit KmlLog(LogRows& rows) : rows_(rows) {}

  void start(const XmlElement& element) {
    text_.clear();
    if (element.name == "Track" || element.name == "LineString") {
      ++part_;
      in_line_ = element.name == "LineString";
      in_track_ = !in_line_;
      times_.clear();
      places_.clear();
    } else if (element.name == "coordinates") {
      in_coordinates_ = in_line_;
    }
  }

  void end(std::string_view name, long line) {
    if (name == "coordinates" && in_coordinates_) {
      take_tuple(line);
      in_coordinates_ = false;
    } else if (name == "when" && in_track_) {
      bool no_zone = false;
      times_.push_back(parse_instant(text_, rows_.options().offset_from_utc, no_zone));
      if (no_zone) rows_.remark("times without a zone were read with the stated offset from UTC");
      match(line);
    } else if (name == "coord" && in_track_) {
      places_.push_back(fix_of(trimmed(text_), ' '));
      match(line);
    } else if (name == "Track") {
      in_track_ = false;
      if (!times_.empty() || !places_.empty()) {
        rows_.bad(line, fmt::format("a track has {} times and {} places too many", times_.size(),
                                    places_.size()));
      }
    } else if (name == "LineString") {
      in_line_ = false;
    } else if (name == "name" && !in_track_ && !in_line_) {
      rows_.name(text_);
    }
    text_.clear();
  }

  void text(std::string_view piece, long line) {
    if (!in_coordinates_) {
      if (text_.size() + piece.size() <= kLongestText) text_ += piece;
      return;
    }
    for (const char c : piece) {
      const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
      if (blank) {
        take_tuple(line);
      } else if (text_.size() < kLongestText) {
        text_ += c;
      }
    }
  }

 private:
  void take_tuple(long line) {
    if (text_.empty()) return;
    if (const auto fix = fix_of(text_, ',')) {
      rows_.remark("a LineString has no times of its own");
      rows_.fix(*fix, line, part_);
    } else {
      rows_.bad(line, printable(text_) + " is no place: longitude,latitude are wanted");
    }
    text_.clear();
  }

  void match(long line) {
    while (!times_.empty() && !places_.empty()) {
      if (!times_.front() || !places_.front()) {
        rows_.bad(line, times_.front() ? "coord is no place" : "when is no time");
      } else {
        track::Fix fix = *places_.front();
        fix.time = times_.front();
        rows_.fix(fix, line, part_);
      }
      times_.pop_front();
      places_.pop_front();
    }
  }

  LogRows& rows_;
  std::string text_;
  std::deque<std::optional<Instant>> times_;
  std::deque<std::optional<track::Fix>> places_;
  bool in_track_ = false;
  bool in_line_ = false;
  bool in_coordinates_ = false;
  int part_ = 0;
};

}  // namespace

void read_kml_log(std::istream& stream, LogRows& rows) {
  KmlLog log(rows);
  long line = 1;
  const std::string broken =
      read_xml(stream, {[&](const XmlElement& element) {
                          line = element.line;
                          log.start(element);
                        },
                        [&](std::string_view name, long at) {
                          line = at;
                          log.end(name, at);
                        },
                        [&](std::string_view text) { log.text(text, line); }});
  if (!broken.empty()) rows.remark(broken);
}

}  // namespace sweepwright::formats
