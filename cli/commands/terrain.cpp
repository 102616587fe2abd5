// sweepwright terrain: highest ground, clearance and safe heights along a line.
#include <fmt/format.h>

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "common/command.hpp"
#include "common/elevation_option.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "common/route_file.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/png_writer.hpp"
#include "sweepwright/formats/profile_chart.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/formats/terrain_report.hpp"

namespace sweepwright::cli {
namespace {

using terrain::ClearanceClass;

constexpr std::string_view kPaintedPicture = "png";
constexpr double kPixelsPerMm = 8;  // 203 dpi: sharp on a screen and on paper

constexpr int kPartlyDone = 1;
constexpr int kAnswerIsNo = 3;

struct TerrainOptions {
  std::vector<std::string> line;
  ElevationOption model;
  std::string altitude;
  std::string clearance;
  std::string corridor;
  std::string steps;
  bool json = false;
  OutputOptions output;
};

/// One word is a file, more are positions.
Path read_line(const TerrainOptions& options, formats::Provenance& provenance) {
  if (options.line.size() == 1) {
    return read_route(options.line.front(), provenance.inputs);
  }
  Path path;
  for (const std::string& place : options.line) path.push_back(position_option("LINE", place));
  return path;
}

formats::TerrainQuestion question(const TerrainOptions& options, Path path) {
  formats::TerrainQuestion asked;
  asked.path = std::move(path);
  asked.altitude = optional_value("--altitude", options.altitude, parse_length);
  if (const auto given = optional_value("--clearance", options.clearance, parse_length)) {
    asked.minimum = *given;
  }
  if (const auto given = optional_value("--corridor", options.corridor, parse_length)) {
    asked.half_width = *given;
  }
  if (options.steps.empty() || options.steps == "line") return asked;
  if (asked.altitude) {
    throw Error(ErrorCode::usage, "--altitude and --steps both say which height is planned",
                "give one of them");
  }
  if (options.steps == "leg") {
    asked.steps = formats::HeightSteps::leg;
    return asked;
  }
  asked.steps = formats::HeightSteps::length;
  asked.shortest_step = option_value("--steps", options.steps, parse_length);
  if (!(asked.shortest_step > Length())) {
    throw Error(ErrorCode::value, "steps have no length", "give line, leg or a length", "--steps");
  }
  return asked;
}

int exit_status(ClearanceClass verdict) {
  switch (verdict) {
    case ClearanceClass::below_minimum:
      return kAnswerIsNo;
    case ClearanceClass::not_checked:
      return kPartlyDone;
    case ClearanceClass::marginal:
    case ClearanceClass::clear:
      break;
  }
  return 0;
}

void run(const TerrainOptions& options, Context& context) {
  const std::string format = options.json ? "json" : options.output.format();
  formats::Provenance provenance = context.provenance();
  const formats::TerrainQuestion asked = question(options, read_line(options, provenance));
  formats::ElevationFiles files = options.model.read();
  provenance.inputs.insert(provenance.inputs.end(), files.digests.begin(), files.digests.end());
  std::vector<std::string> remarks = std::move(files.remarks);
  if (format != "text") {
    for (const std::string& remark : remarks) tell(remark);
  }
  const formats::TerrainReport report =
      formats::make_terrain_report(files.model, asked, std::move(remarks));
  options.output.write([&](formats::Sink& sink) {
    if (format == "json") {
      sink.write(formats::terrain_report_json(report, provenance));
    } else if (format == kPicture) {
      sink.write(formats::write_svg(formats::draw_profile(report)));
    } else if (format == kPaintedPicture) {
      sink.write(formats::write_png(formats::draw_profile(report), kPixelsPerMm));
    } else {
      sink.write(formats::terrain_report_text(report));
    }
  });
  context.exit_status = exit_status(formats::verdict(report));
}

}  // namespace

void add_terrain_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand(
      "terrain",
      "Check a line against an elevation model: highest ground, clearance, safe heights");
  command->footer(fmt::format(
      "Exit status: 3 when the clearance is below the minimum anywhere, 1 when ground could not "
      "be\n"
      "checked. {}\n"
      "Planning aid only, not for navigation: check charts, notices, obstacles and weather; local\n"
      "rules apply and the pilot in command decides.\n\n"
      "Examples:\n"
      "  sweepwright terrain \"37-30N 105-40W\" \"37-40N 105-20W\" --dem N37W106.hgt --altitude "
      "14500ft\n"
      "  sweepwright terrain legs.geojson --dem N37W106.hgt N37W105.hgt --steps leg -o profile.svg",
      formats::kTerrainCaution));
  auto options = std::make_shared<TerrainOptions>();
  command
      ->add_option("LINE", options->line,
                   "A file of a route (GPX, GeoJSON, KML, or a position a line), or two or more "
                   "positions in the "
                   "order of travel")
      ->required();
  options->model
      .add_to(*command, "--dem",
              "Elevation models: SRTM .hgt, DTED, GeoTIFF, Esri ASCII; several are one")
      ->required();
  command
      ->add_option(
          "--altitude", options->altitude,
          "Planned height above mean sea level; without it the least that keeps the minimum")
      ->type_name("HEIGHT");
  command
      ->add_option("--clearance", options->clearance,
                   "Minimum height above the highest ground in the corridor; 1000ft if not given")
      ->type_name("LENGTH");
  command
      ->add_option("--corridor", options->corridor,
                   "How far to each side ground counts; 0.5NM if not given")
      ->type_name("LENGTH");
  command
      ->add_option(
          "--steps", options->steps,
          "Without --altitude: one height for the line, for each leg, or for steps of this "
          "length")
      ->type_name("line|leg|LENGTH");
  command->add_flag("--json", options->json, "Write JSON");
  options->output.add_to(*command,
                         {"text", "json", std::string(kPicture), std::string(kPaintedPicture)});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
