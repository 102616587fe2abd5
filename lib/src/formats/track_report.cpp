#include "sweepwright/formats/track_report.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

using Json = nlohmann::ordered_json;

Json span_json(const track::Span& span) {
  return {{"time_s", span.time.count()}, {"distance_m", span.distance.metres()}};
}

std::string span_text(const track::Span& span) {
  std::string text = format_length(span.distance, LengthUnit::nautical_mile, 1);
  if (const auto mean = track::mean_speed(span)) {
    text +=
        fmt::format(" in {}, {:.0f} kt over the ground", format_duration(span.time), mean->knots());
  }
  return text;
}

Json report_json(const TrackReport& report) {
  const track::TrackStatistics& figures = report.statistics;
  Json json{{"file", report.file},
            {"format", name(report.log.format)},
            {"name", report.log.name},
            {"rows", report.log.rows},
            {"bad_rows", report.log.bad_rows},
            {"kept", report.cleaning.kept},
            {"segments", report.cleaning.segments},
            {"gaps", report.cleaning.gaps}};
  Json drops = Json::array();
  for (std::size_t i = 0; i < track::kDrops; ++i) {
    const track::DropCount& drop = report.cleaning.drops[i];
    if (drop.count == 0) continue;
    drops.push_back({{"reason", track::name(static_cast<track::Drop>(i))},
                     {"count", drop.count},
                     {"first_row", drop.first_row}});
  }
  json["dropped"] = drops;
  json["begin"] = figures.begin ? Json(format_instant(*figures.begin)) : Json();
  json["end"] = figures.end ? Json(format_instant(*figures.end)) : Json();
  json["all"] = span_json(figures.all);
  if (report.has_area) json["inside"] = span_json(figures.inside);
  const auto speed = [](std::optional<Speed> value) {
    return value ? Json(value->metres_per_second()) : Json();
  };
  const auto height = [](std::optional<Length> value) {
    return value ? Json(value->metres()) : Json();
  };
  json["slowest_mps"] = speed(figures.slowest);
  json["mean_speed_mps"] = speed(track::mean_speed(figures.all));
  json["fastest_mps"] = speed(figures.fastest);
  json["lowest_m"] = height(figures.lowest);
  json["highest_m"] = height(figures.highest);
  json["statements"] = statements(report.log, report.cleaning);
  return json;
}

}  // namespace

std::string format_instant(Instant time) {
  const TimePoint seconds = std::chrono::floor<std::chrono::seconds>(time);
  std::string text = format_utc(seconds);
  const auto thousandths = (time - seconds).count();
  if (thousandths != 0) text.insert(text.size() - 1, fmt::format(".{:03}", thousandths));
  return text;
}

std::string track_report_json(const std::vector<TrackReport>& reports,
                              const Provenance& provenance) {
  Json json;
  json["provenance"] = provenance_text(provenance);
  json["tracks"] = Json::array();
  for (const TrackReport& report : reports) json["tracks"].push_back(report_json(report));
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string track_report_text(const std::vector<TrackReport>& reports) {
  std::string text;
  for (const TrackReport& report : reports) {
    const track::TrackStatistics& figures = report.statistics;
    text += report.file + (report.log.name.empty() ? "" : ": " + report.log.name) + "\n";
    if (figures.begin) {
      text += fmt::format("  from {} to {}\n", format_instant(*figures.begin),
                          format_instant(*figures.end));
    }
    text += fmt::format("  {}\n", span_text(figures.all));
    if (report.has_area) text += fmt::format("  in the area: {}\n", span_text(figures.inside));
    if (figures.lowest) {
      text += fmt::format("  altitudes {:.0f} to {:.0f} m\n", figures.lowest->metres(),
                          figures.highest->metres());
    }
    for (const std::string& statement : statements(report.log, report.cleaning)) {
      text += "  " + statement + "\n";
    }
  }
  return text;
}

void write_track_csv_header(Sink& sink) {
  sink.write("segment,time,latitude_deg,longitude_deg,altitude_m\n");
}

void write_track_csv_row(Sink& sink, const track::Fix& fix, std::size_t segment) {
  sink.write(fmt::format(
      "{},{},{:.7f},{:.7f},{}\n", segment, fix.time ? format_instant(*fix.time) : std::string(),
      fix.position.latitude().degrees(), fix.position.longitude().degrees(),
      fix.altitude ? fmt::format("{:.1f}", fix.altitude->metres()) : std::string()));
}

}  // namespace sweepwright::formats
