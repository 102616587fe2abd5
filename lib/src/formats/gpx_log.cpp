// GPX 1.1: trk, trkseg, trkpt with ele and time.
#include <fmt/format.h>

#include "formats/log_reading.hpp"
#include "formats/xml_stream.hpp"
#include "sweepwright/base/text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kLongestText = 200;

class GpxLog {
 public:
  explicit GpxLog(LogRows& rows) : rows_(rows) {}

  void start(const XmlElement& element) {
    text_.clear();
    if (element.name == "trk") {
      in_track_ = true;
      ++part_;
    } else if (element.name == "trkseg") {
      ++part_;
    } else if (element.name == "trkpt") {
      point_ = {};
      fault_.clear();
      in_point_ = true;
      const auto place = position_of(parse_number(element.attribute("lat")),
                                     parse_number(element.attribute("lon")));
      if (place) {
        point_.position = *place;
      } else {
        fault_ = fmt::format("lat {} lon {} is no place", printable(element.attribute("lat")),
                             printable(element.attribute("lon")));
      }
    }
  }

  void end(std::string_view name, long line) {
    if (name == "trk") in_track_ = false;
    if (in_track_ && !in_point_ && name == "name") rows_.name(text_);
    if (!in_point_) return;
    if (name == "ele") {
      if (const auto metres = parse_number(text_)) point_.altitude = Length::metres(*metres);
    } else if (name == "time") {
      bool no_zone = false;
      point_.time = parse_instant(text_, rows_.options().offset_from_utc, no_zone);
      if (!point_.time) fault_ = fmt::format("{} is no time", printable(text_));
      if (no_zone) {
        rows_.remark(fmt::format("times without a zone were read as UTC{:+} min",
                                 rows_.options().offset_from_utc.count()));
      }
    } else if (name == "trkpt") {
      in_point_ = false;
      if (fault_.empty()) {
        rows_.fix(point_, line, part_);
      } else {
        rows_.bad(line, fault_);
      }
    }
    text_.clear();
  }

  void text(std::string_view piece) {
    if (text_.size() + piece.size() <= kLongestText) text_ += piece;
  }

 private:
  LogRows& rows_;
  track::Fix point_;
  std::string fault_;
  std::string text_;
  bool in_track_ = false;
  bool in_point_ = false;
  int part_ = 0;
};

}  // namespace

void read_gpx_log(std::istream& stream, LogRows& rows) {
  GpxLog log(rows);
  const std::string broken =
      read_xml(stream, {[&](const XmlElement& element) { log.start(element); },
                        [&](std::string_view name, long line) { log.end(name, line); },
                        [&](std::string_view text) { log.text(text); }});
  if (!broken.empty()) rows.remark(broken);
}

}  // namespace sweepwright::formats
