#include "formats/pattern_features.hpp"

#include <fmt/format.h>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

std::string leg_text(const LegRow& row) {
  return fmt::format("{} leg {}: track {}, {}, {}; total {}, {}", pattern::name(row.leg.kind),
                     row.number, format_direction(row.leg.line.start_track),
                     format_length(row.leg.line.length, LengthUnit::nautical_mile, 2),
                     format_duration(row.time),
                     format_length(row.running_distance, LengthUnit::nautical_mile, 1),
                     format_duration(row.running_time));
}

}  // namespace

std::vector<Property> leg_properties(const LegRow& row) {
  return {{"name", fmt::format("Leg {}", row.number)},
          {"kind", std::string(pattern::name(row.leg.kind))},
          {"number", std::int64_t{row.number}},
          {"true_track_deg", row.leg.line.start_track.degrees()},
          {"distance_m", row.leg.line.length.metres()},
          {"time_s", row.time.count()},
          {"running_distance_m", row.running_distance.metres()},
          {"running_time_s", row.running_time.count()}};
}

std::vector<KmlStyle> pattern_styles(std::string_view id, Colour colour) {
  return {{.id = fmt::format("{}-search", id), .line = colour, .line_width_pixels = 3, .fill = {}},
          {.id = fmt::format("{}-joint", id), .line = colour, .line_width_pixels = 1, .fill = {}},
          {.id = fmt::format("{}-start", id), .line = colour, .fill = {}, .label_scale = 1}};
}

std::string guide_title(const pattern::GuideLine& guide) {
  std::string title = guide.name;
  title.front() = to_upper_ascii(title.substr(0, 1)).front();
  return title;
}

void write_guides(GeoJsonWriter& writer, const pattern::Pattern& pattern) {
  for (const pattern::GuideLine& guide : pattern.guides) {
    writer.feature(guide.path,
                   std::vector<Property>{{"name", guide_title(guide)}, {"kind", guide.name}});
  }
}

void write_guides(KmlWriter& writer, const pattern::Pattern& pattern, std::string_view style_id) {
  for (const pattern::GuideLine& guide : pattern.guides) {
    writer.placemark({.name = guide_title(guide),
                      .description = {},
                      .time = {},
                      .style_id = fmt::format("{}-joint", style_id),
                      .properties = {},
                      .geometry = guide.path});
  }
}

void write_pattern_folder(KmlWriter& writer, const pattern::Pattern& pattern, Speed speed,
                          std::string_view style_id) {
  const Position start = commence_search_point(pattern);
  writer.placemark({.name = std::string(kCommenceSearchPoint),
                    .description = format_position(start),
                    .time = {},
                    .style_id = fmt::format("{}-start", style_id),
                    .properties = {},
                    .geometry = start});
  for (const LegRow& row : leg_rows(pattern, speed)) {
    const bool search = row.leg.kind == pattern::LegKind::search;
    writer.placemark({.name = fmt::format("Leg {}", row.number),
                      .description = leg_text(row),
                      .time = {},
                      .style_id = fmt::format("{}-{}", style_id, search ? "search" : "joint"),
                      .properties = {},
                      .geometry = Path{row.leg.from, row.leg.to}});
  }
  write_guides(writer, pattern, style_id);
}

std::vector<GpxPoint> route_points(const pattern::Pattern& pattern, std::string_view prefix) {
  std::vector<GpxPoint> points;
  const Position start = commence_search_point(pattern);
  points.push_back({start, fmt::format("{}CSP", prefix),
                    fmt::format("{} {}", kCommenceSearchPoint, format_position(start)), ""});
  for (std::size_t i = 0; i < pattern.legs.size(); ++i) {
    const pattern::Leg& leg = pattern.legs[i];
    points.push_back({leg.to, fmt::format("{}L{:02}", prefix, i + 1),
                      fmt::format("End of {} leg {}, track {} {}", pattern::name(leg.kind), i + 1,
                                  format_direction(leg.line.start_track), format_position(leg.to)),
                      ""});
  }
  return points;
}

}  // namespace sweepwright::formats
