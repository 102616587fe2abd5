// sweepwright pattern: the legs of one pattern, from a start or over an area.
#include <memory>

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
  OutputOptions output;
};

formats::PatternFormat pattern_format(const std::string& name) {
  if (name == "kml") return formats::PatternFormat::kml;
  if (name == "gpx") return formats::PatternFormat::gpx;
  if (name == "csv") return formats::PatternFormat::csv;
  if (name == "json") return formats::PatternFormat::json;
  return formats::PatternFormat::geojson;
}

void run(PatternOptions& options, const Context& context) {
  const Speed speed = option_value("--speed", options.speed, parse_speed);
  const std::string format = options.output.format();
  formats::Provenance provenance = context.provenance();
  const RequestedPattern requested = make_requested_pattern(options.request, speed, provenance);
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

}  // namespace

void add_pattern_command(CLI::App& app, Context& context) {
  CLI::App* command =
      app.add_subcommand("pattern", "Draw one search pattern with distances and times");
  command->footer(
      "Times are without wind and turns. Planning aid only, not for navigation: check charts, "
      "notices,\n"
      "terrain and weather; local rules apply and the pilot in command decides.\n\n"
      "Examples:\n"
      "  sweepwright pattern --kind parallel --start \"38-15.0N 117-02.5W\" --track 045T --length "
      "12NM \\\n"
      "    --legs 6 --spacing 1NM --speed 90kt -o legs.gpx\n"
      "  sweepwright pattern --kind creeping --area area.geojson --spacing 0.5NM --speed 90kt "
      "--format json");
  auto options = std::make_shared<PatternOptions>();
  options->request.add_to(*command);
  command->add_option("--speed", options->speed, "Speed over the ground")
      ->required()
      ->type_name("SPEED");
  options->output.add_to(*command, {"geojson", "kml", "gpx", "csv", "json", std::string(kPicture)});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
