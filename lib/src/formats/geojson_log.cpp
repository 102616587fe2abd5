// GeoJSON: LineString and MultiLineString with `coordTimes` or `times` beside them, or Points with
// a `time` each.
#include <fmt/format.h>

#include <iterator>
#include <string>

#include "formats/geojson_place.hpp"
#include "formats/log_reading.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/input_file.hpp"

namespace sweepwright::formats {
namespace {

/// A coordinate pair is three values: 64 MB of text hold fewer.
constexpr std::size_t kMostValues = 20'000'000;

std::string all_of(std::istream& stream) {
  std::string text;
  std::string piece(65536, '\0');
  while (stream.read(piece.data(), static_cast<std::streamsize>(piece.size())),
         stream.gcount() > 0) {
    text.append(piece, 0, static_cast<std::size_t>(stream.gcount()));
    if (text.size() > kLargestTextBytes) {
      throw Error(ErrorCode::input,
                  fmt::format("a GeoJSON log is read whole, and this one has more than {} MB",
                              kLargestTextBytes / (1024 * 1024)),
                  "save the track as GPX: logs in GPX can be of any length");
    }
  }
  return text;
}

class GeoJsonLog {
 public:
  explicit GeoJsonLog(LogRows& rows) : rows_(rows) {}

  void object(const JsonValue& value) {
    const JsonValue* type = member(value, "type");
    if (type == nullptr) return;
    if (const JsonValue* features = member(value, "features")) {
      for (const JsonValue& feature : features->items) object(feature);
    } else if (const JsonValue* geometry = member(value, "geometry")) {
      geometry_of_feature(*geometry, member(value, "properties"));
    } else {
      geometry_of_feature(value, nullptr);
    }
  }

 private:
  void geometry_of_feature(const JsonValue& geometry, const JsonValue* properties) {
    const JsonValue* type = member(geometry, "type");
    const JsonValue* coordinates = member(geometry, "coordinates");
    if (type == nullptr || coordinates == nullptr) return;
    if (properties != nullptr) {
      if (const JsonValue* name = member(*properties, "name")) rows_.name(name->text);
    }
    const JsonValue* times = times_of(properties);
    if (type->text == "Point") {
      const JsonValue* time = properties == nullptr ? nullptr : member(*properties, "time");
      fix(*coordinates, time, 0);
    } else if (type->text == "LineString") {
      ++part_;
      line(*coordinates, times);
    } else if (type->text == "MultiLineString") {
      for (std::size_t i = 0; i < coordinates->items.size(); ++i) {
        ++part_;
        line(coordinates->items[i],
             times != nullptr && i < times->items.size() ? &times->items[i] : nullptr);
      }
    }
  }

  /// `coordTimes`, or `times` of `coordinateProperties`.
  static const JsonValue* times_of(const JsonValue* properties) {
    if (properties == nullptr) return nullptr;
    for (const std::string_view name : {"coordTimes", "times"}) {
      if (const JsonValue* times = member(*properties, name)) return times;
    }
    const JsonValue* inner = member(*properties, "coordinateProperties");
    return inner == nullptr ? nullptr : member(*inner, "times");
  }

  void line(const JsonValue& coordinates, const JsonValue* times) {
    for (std::size_t i = 0; i < coordinates.items.size(); ++i) {
      fix(coordinates.items[i],
          times != nullptr && i < times->items.size() ? &times->items[i] : nullptr, part_);
    }
  }

  void fix(const JsonValue& place, const JsonValue* time, int part) {
    const auto number = [&](std::size_t i) -> std::optional<double> {
      if (i >= place.items.size() || place.items[i].kind != JsonKind::number) return std::nullopt;
      return place.items[i].number;
    };
    const auto position = position_of(number(1), number(0));
    if (!position) {
      rows_.bad(place.line, shown(place) + " is no place: [longitude, latitude] is wanted");
      return;
    }
    track::Fix fix{*position, {}, {}};
    if (const auto metres = number(2)) fix.altitude = Length::metres(*metres);
    if (time != nullptr && time->kind == JsonKind::text) {
      bool no_zone = false;
      fix.time = parse_instant(time->text, rows_.options().offset_from_utc, no_zone);
      if (!fix.time) return rows_.bad(time->line, printable(time->text) + " is no time");
      if (no_zone) rows_.remark("times without a zone were read with the stated offset from UTC");
    }
    rows_.fix(fix, place.line, part);
  }

  LogRows& rows_;
  int part_ = 0;
};

}  // namespace

void read_geojson_log(std::istream& stream, LogRows& rows) {
  const std::string text = all_of(stream);
  GeoJsonLog(rows).object(parse_json(text, kMostValues));
}

}  // namespace sweepwright::formats
