// sweepwright coverage: what tracks as flown covered, cell by cell, and the holes that they left.
#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <thread>

#include "commands/coverage_tracks.hpp"
#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/debrief/track_ground.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/coverage_drawing.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::cli {
namespace {

/// Finer rasters than this are asked for, not taken by themselves.
constexpr std::size_t kCellsUnasked = 250'000;
constexpr double kCellsOfASweep = 10;  ///< the raster's cells are a tenth of the sweep width
constexpr unsigned kMostThreads = 16;

struct CoverageOptions {
  TrackOptions tracks;
  std::string sweep_width;
  std::string area;
  std::string grid;
  std::string level;
  std::string law = "inverse-cube";
  std::string cell;
  std::string hole_below;
  std::string least_hole = "0NM2";
  OutputOptions output;
};

sweep::Probability parse_wanted(const std::string& text) {
  return sweep::Probability(parse_number(text, "the wanted probability of detection"));
}

Length parse_sweep_width(const std::string& text) {
  const Length width = parse_length(text);
  if (!(width > Length())) {
    throw Error(ErrorCode::value, fmt::format("{} is no sweep width: expected above 0", text));
  }
  return width;
}

/// The raster's cells: as asked for, else a tenth of the sweep width or as small as can be.
Length cell_of(const CoverageOptions& options, const Region& area, Length sweep_width,
               sweep::DetectionLaw law) {
  if (const auto cell = optional_value("--cell", options.cell, parse_length)) {
    if (law == sweep::DetectionLaw::exponential && options.grid.empty() && *cell < sweep_width) {
      throw Error(ErrorCode::value,
                  "the exponential law holds for ground wider than the sweep, not for small cells",
                  "give cells of the sweep width or more, or --grid and --level", "--cell");
    }
    return *cell;
  }
  if (law == sweep::DetectionLaw::exponential && options.grid.empty()) return 2 * sweep_width;
  const Length wanted = sweep_width / kCellsOfASweep;
  const Length least = debrief::least_cell(area, kCellsUnasked);
  if (wanted >= least) return wanted;
  tell(
      fmt::format("cells of {:.0f} m, a tenth of the sweep width would be {:.0f} m: --cell takes "
                  "others",
                  least.metres(), wanted.metres()));
  return least;
}

void add_names(const CoverageOptions& options, formats::CoverageReport& report) {
  if (options.grid.empty() != options.level.empty()) {
    throw Error(ErrorCode::usage, "--grid and --level go together", "give both, or neither");
  }
  if (options.grid.empty()) return;
  const grid::Grid& grid =
      option_value("--grid", options.grid,
                   [](const std::string& name) -> const grid::Grid& { return grid::grid(name); });
  const grid::Level level = option_value("--level", options.level,
                                         [&](const std::string& name) { return grid.level(name); });
  report.named = debrief::grid_coverage(report.map, report.area, grid, level, report.law);
}

formats::CoverageReport make_report(const CoverageOptions& options,
                                    formats::Provenance& provenance) {
  formats::CoverageReport report;
  report.sweep_width = option_value("--sweep-width", options.sweep_width, parse_sweep_width);
  report.law = option_value("--law", options.law, [](const std::string& text) {
    return sweep::parse_detection_law(text);
  });
  report.wanted = optional_value("--hole-below", options.hole_below, parse_wanted);
  provenance.inputs = digests(options.tracks);
  debrief::ThinnedTracks thinned(report.sweep_width / 8);
  for_each_piece(options.tracks, report.sweep_width, true, [&](const debrief::SweptPiece& piece) {
    thinned.add(piece);
    report.track_length += geodesic(piece.from, piece.to).length;
  });
  report.tracks = thinned.paths();
  if (options.area.empty()) {
    report.area = debrief::area_round(report.tracks, report.sweep_width);
  } else {
    formats::AreaFile file = formats::read_area_file(options.area);
    for (const std::string& remark : file.reading.remarks) tell(options.area + ": " + remark);
    report.area = std::move(file.reading.region);
    provenance.inputs.push_back(file.digest);
  }
  const Length cell = cell_of(options, report.area, report.sweep_width, report.law);
  const debrief::CoverageFrame frame = debrief::coverage_frame(report.area, cell);
  const unsigned threads = std::clamp(std::thread::hardware_concurrency(), 1U, kMostThreads);
  debrief::CoverageAccumulator accumulator(frame, threads);
  for_each_piece(options.tracks, report.sweep_width, false,
                 [&](const debrief::SweptPiece& piece) { accumulator.add(piece); });
  report.map = accumulator.map();
  report.inside = debrief::cells_of(frame, report.area);
  report.figures = debrief::coverage_figures(report.map, report.inside, report.law).value();
  add_names(options, report);
  if (report.wanted) {
    const Area least = option_value("--least-hole", options.least_hole, parse_area_size);
    report.holes = debrief::holes(report.map, report.inside, {report.law, *report.wanted, least});
  }
  return report;
}

formats::CoverageFormat coverage_format(const std::string& name) {
  if (name == "csv") return formats::CoverageFormat::csv;
  if (name == "kml") return formats::CoverageFormat::kml;
  if (name == "json") return formats::CoverageFormat::json;
  return formats::CoverageFormat::geojson;
}

void tell_result(const formats::CoverageReport& report) {
  const debrief::CoverageFigures& figures = report.figures;
  tell(fmt::format("mean POD {:.1f} %, {:.1f} % swept, coverage {:.2f} on {:.2f} NM\u00b2",
                   100 * figures.pod, 100 * figures.swept_share, figures.coverage,
                   figures.area.square_nautical_miles()));
  if (figures.effort == Area()) {
    tell("no track lies in the area: is it the right area, are they the right tracks?");
  }
  if (!report.wanted) return;
  Area all;
  for (const debrief::Hole& hole : report.holes) all += hole.area;
  tell(fmt::format("{} {} under {:g} %, {:.2f} NM\u00b2 together", report.holes.size(),
                   report.holes.size() == 1 ? "hole" : "holes", 100 * report.wanted->value(),
                   all.square_nautical_miles()));
}

void run(const CoverageOptions& options, const Context& context) {
  const std::string format = options.output.format();
  formats::Provenance provenance = context.provenance();
  const formats::CoverageReport report = make_report(options, provenance);
  options.output.write([&](formats::Sink& sink) {
    if (format == kPicture) {
      sink.write(formats::write_svg(formats::draw_coverage_map(report, kPictureSize)));
      return;
    }
    formats::write_coverage(sink, report, coverage_format(format), provenance);
  });
  tell_result(report);
}

std::string footer() {
  return "POD is the chance that an object at a place was seen by any pass along the tracks, if it "
         "was there.\n"
         "One sweep width stands for all of the tracks: fly-overs too high, too fast or in cloud "
         "find less.\n"
         "Without --area the ground is a rectangle round the tracks, one sweep width wider.\n\n"
         "Examples:\n"
         "  sweepwright coverage --track lark1.gpx --sweep-width 1NM --area area.geojson "
         "--hole-below 0.5 -f svg -o coverage.svg\n"
         "  sweepwright coverage --track lark1.gpx --track heron2.igc --sweep-width 0.6NM --grid "
         "gars --level 5min -o cells.geojson\n\n" +
         caution_lines();
}

}  // namespace

void add_coverage_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand(
      "coverage", "Reckon from tracks as flown what was covered and found, and the holes left");
  command->footer(footer());
  auto options = std::make_shared<CoverageOptions>();
  options->tracks.add_to(*command, true);
  command->add_option("--sweep-width", options->sweep_width, "Sweep width of the crews")
      ->required()
      ->type_name("LENGTH");
  command->add_option("--area", options->area, "Area that was to be searched, GeoJSON or KML")
      ->type_name("FILE");
  command->add_option("--grid", options->grid, "Figures for the cells of this grid")
      ->type_name("SYSTEM");
  command->add_option("--level", options->level, "Size of the grid's cells")->type_name("LEVEL");
  command
      ->add_option("--law", options->law,
                   "Law of detection: inverse-cube (default), definite-range, exponential")
      ->type_name("LAW");
  command
      ->add_option("--cell", options->cell,
                   "Side of the raster's cells; else a tenth of the sweep width")
      ->type_name("LENGTH");
  command
      ->add_option("--hole-below", options->hole_below,
                   "Show ground under this probability of detection, 0 to 1, as holes")
      ->type_name("P");
  command->add_option("--least-hole", options->least_hole, "Leave out holes smaller than this")
      ->type_name("AREA");
  options->output.add_to(*command, {"geojson", "json", "csv", "kml", std::string(kPicture)});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
