// sweepwright track: what a log holds, cleaned, and what was dropped from it and why.
#include <fmt/format.h>

#include <memory>
#include <string>
#include <vector>

#include "common/command.hpp"
#include "common/output.hpp"
#include "common/overlay_output.hpp"
#include "common/track_option.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/track_report.hpp"

namespace sweepwright::cli {
namespace {

struct TrackCommandOptions {
  std::vector<std::string> files;
  std::string area;
  TrackOptions track;
  OutputOptions output;
};

void run(const TrackCommandOptions& options, const Context& context) {
  formats::Provenance provenance = context.provenance();
  Region area;
  if (!options.area.empty()) {
    formats::AreaFile file = formats::read_area_file(options.area);
    for (const std::string& remark : file.reading.remarks) {
      tell(fmt::format("{}: {}", options.area, remark));
    }
    provenance.inputs.push_back(file.digest);
    area = file.reading.region;
  }
  const std::string format = options.output.format();
  const formats::TrackReadOptions reading = options.track.reading();
  const track::CleaningOptions cleaning = options.track.cleaning();
  const bool summary = format == "text" || format == "json";

  std::vector<formats::TrackReport> reports;
  formats::Overlay overlay{"Tracks", {}};
  const auto read_all = [&](const track::Cleaner::Sink& sink) {
    for (const std::string& path : options.files) {
      track::StatisticsCounter counter(area);
      const formats::StreamedTrack streamed = formats::stream_track_file(
          path, reading, cleaning, [&](const track::Fix& fix, bool begins) {
            counter.add(fix, begins);
            sink(fix, begins);
          });
      reports.push_back(
          {path, streamed.log, streamed.cleaning, counter.statistics(), !area.polygons.empty()});
    }
  };

  if (summary) {
    read_all([](const track::Fix&, bool) {});
    options.output.write([&](formats::Sink& sink) {
      sink.write(format == "json" ? formats::track_report_json(reports, provenance)
                                  : formats::track_report_text(reports));
    });
    return;
  }
  if (format == "csv") {
    options.output.write([&](formats::Sink& sink) {
      std::size_t segment = 0;
      formats::write_track_csv_header(sink);
      read_all([&](const track::Fix& fix, bool begins) {
        if (begins) ++segment;
        formats::write_track_csv_row(sink, fix, segment);
      });
    });
  } else {
    std::vector<Path> segments;
    read_all([&](const track::Fix& fix, bool begins) {
      if (begins) segments.emplace_back();
      segments.back().push_back(fix.position);
    });
    for (Path& segment : segments) {
      if (segment.size() < 2) continue;
      overlay.items.push_back(
          {fmt::format("Segment {}", overlay.items.size() + 1), "", {}, std::move(segment)});
    }
    write_overlay_to(options.output, overlay, provenance);
  }
  for (const formats::TrackReport& report : reports) {
    for (const std::string& statement : formats::statements(report.log, report.cleaning)) {
      tell(fmt::format("{}: {}", report.file, statement));
    }
  }
}

}  // namespace

void add_track_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand(
      "track", "Read and clean the log of a GPS device; say what was dropped and why");
  command->footer(
      "Formats: GPX, KML (with gx:Track), GeoJSON, IGC, NMEA 0183 and CSV, told by their content.\n"
      "Nothing is invented: gaps stay open. A GPX, IGC, NMEA or CSV log may have any length.\n" +
      caution_lines() +
      "\nExample:\n"
      "  sweepwright track sortie.gpx --area sector.geojson\n"
      "  sweepwright track sortie.igc -f csv -o cleaned.csv");
  auto options = std::make_shared<TrackCommandOptions>();
  command->add_option("FILE", options->files, "Logs; - is standard input")
      ->required()
      ->type_name("FILE");
  command->add_option("--area", options->area, "Say also what was flown in this area")
      ->type_name("FILE");
  options->track.add_to(*command, false);
  std::vector<std::string> formats{"text", "json", "csv"};
  for (const std::string& format : overlay_formats()) formats.push_back(format);
  options->output.add_to(*command, formats);
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
