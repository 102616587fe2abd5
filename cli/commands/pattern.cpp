// sweepwright pattern: the legs of one pattern, from a start or over an area, on paper or as flown.
#include <algorithm>
#include <memory>

#include "commands/pattern_flown.hpp"
#include "commands/pattern_request.hpp"
#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/pattern_writer.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::cli {
namespace {

struct PatternOptions {
  PatternRequest request;
  std::string speed;
  FlownOptions flown;
  OutputOptions output;
};

formats::PatternFormat pattern_format(const std::string& name) {
  if (name == "kml") return formats::PatternFormat::kml;
  if (name == "gpx") return formats::PatternFormat::gpx;
  if (name == "csv") return formats::PatternFormat::csv;
  if (name == "json") return formats::PatternFormat::json;
  return formats::PatternFormat::geojson;
}

/// Exit status: done, and the answer of a check is no.
constexpr int kAnswerIsNo = 3;

void write_on_paper(const PatternOptions& options, const RequestedPattern& requested, Speed speed,
                    const std::string& format, const formats::Provenance& provenance) {
  formats::leg_rows(requested.pattern, speed);  // refuses a speed of 0 before the output is opened
  options.output.write([&](formats::Sink& sink) {
    if (format == kPicture) {
      sink.write(formats::write_svg(
          formats::draw_pattern_map(requested.pattern, requested.area, kPictureSize)));
    } else {
      formats::write_pattern(sink, requested.pattern, speed, pattern_format(format), provenance);
    }
  });
}

void write_flown(const PatternOptions& options, const RequestedPattern& requested,
                 const std::string& format, const formats::Provenance& provenance,
                 Context& context) {
  const formats::FlownReport report =
      make_flown_report(options.flown, requested.pattern, provenance.stamp);
  for (const std::string& remark : formats::flown_remarks(report)) {
    const std::vector<std::string>& told = requested.pattern.remarks;
    if (std::find(told.begin(), told.end(), remark) == told.end()) tell(remark);
  }
  options.output.write([&](formats::Sink& sink) {
    if (format == kPicture) {
      sink.write(formats::write_svg(formats::draw_flown_map(report, requested.area, kPictureSize)));
    } else {
      formats::write_flown_pattern(sink, report, pattern_format(format), provenance);
    }
  });
  if (report.endurance && !report.endurance->is_enough()) context.exit_status = kAnswerIsNo;
}

void run(PatternOptions& options, Context& context) {
  const bool flown = options.flown.is_asked_for();
  if (flown == !options.speed.empty()) {
    throw Error(ErrorCode::usage, flown ? "two speeds are given" : "no speed is given",
                "give --speed for times on paper, or --true-airspeed for the pattern as flown");
  }
  const Speed speed =
      flown ? option_value("--true-airspeed", options.flown.true_airspeed, parse_speed)
            : option_value("--speed", options.speed, parse_speed);
  const std::string format = options.output.format();
  formats::Provenance provenance = context.provenance();
  const RequestedPattern requested =
      make_requested_pattern(options.request, speed, flown ? &options.flown : nullptr, provenance);
  if (flown) {
    write_flown(options, requested, format, provenance, context);
  } else {
    write_on_paper(options, requested, speed, format, provenance);
  }
}

}  // namespace

void add_pattern_command(CLI::App& app, Context& context) {
  CLI::App* command =
      app.add_subcommand("pattern", "Draw one search pattern with distances and times");
  command->footer(
      "With --speed, times are without wind and turns; with --true-airspeed, legs are flown in the "
      "wind\n"
      "and with turns. Planning aid only, not for navigation: check charts, notices, terrain and "
      "weather;\n"
      "local rules apply and the pilot in command decides.\n\n"
      "Examples:\n"
      "  sweepwright pattern --kind parallel --start \"38-15.0N 117-02.5W\" --track 045T --length "
      "12NM \\\n"
      "    --legs 6 --spacing 1NM --speed 90kt -o legs.gpx\n"
      "  sweepwright pattern --kind creeping --area area.geojson --spacing 0.5NM --speed 90kt "
      "--format json\n"
      "  sweepwright pattern --kind square --start \"38-15N 117-02.5W\" --spacing 2NM --legs 8 \\\n"
      "    --true-airspeed 90kt --wind 250/20kt --fuel-flow 30kg/h --format csv");
  auto options = std::make_shared<PatternOptions>();
  options->request.add_to(*command);
  command->add_option("--speed", options->speed, "Speed over the ground, for times on paper")
      ->type_name("SPEED");
  options->flown.add_to(*command);
  options->output.add_to(*command, {"geojson", "kml", "gpx", "csv", "json", std::string(kPicture)});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
