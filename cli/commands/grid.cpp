// sweepwright grid: the cells of a grid at a place, of a name, or of an area.
#include "sweepwright/grid/grid.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/cell_writer.hpp"
#include "sweepwright/grid/systems.hpp"
#include "sweepwright/locate/read_position.hpp"

namespace sweepwright::cli {
namespace {

struct GridOptions {
  std::string system;
  std::string level;
  std::string at;
  std::string cell;
  std::string area;
  std::string bbox;
  OutputOptions output;
};

formats::CellFormat cell_format(const std::string& name) {
  if (name == "kml") return formats::CellFormat::kml;
  if (name == "csv") return formats::CellFormat::csv;
  if (name == "json") return formats::CellFormat::json;
  return formats::CellFormat::geojson;
}

grid::LatLonBox parse_box(std::string_view text) {
  std::vector<double> sides;
  for (std::size_t start = 0; start <= text.size();) {
    const std::size_t end = std::min(text.find(',', start), text.size());
    sides.push_back(
        parse_number(text.substr(start, end - start), "each side of the box in degrees"));
    start = end + 1;
  }
  if (sides.size() != 4) {
    throw Error(ErrorCode::value, fmt::format("'{}' has not four sides", printable(text)),
                "write WEST,SOUTH,EAST,NORTH in degrees, such as -118,37,-117,38");
  }
  const grid::LatLonBox box{.south = Angle::degrees(sides[1]),
                            .north = Angle::degrees(sides[3]),
                            .west = Angle::degrees(sides[0]),
                            .east = Angle::degrees(sides[2])};
  grid::check(box);
  return box;
}

void require_one_source(const GridOptions& options) {
  const int given =
      static_cast<int>(!options.at.empty()) + static_cast<int>(!options.cell.empty()) +
      static_cast<int>(!options.area.empty()) + static_cast<int>(!options.bbox.empty());
  if (given != 1) {
    throw Error(ErrorCode::usage, given == 0 ? "no place is given" : "more than one place is given",
                "give one of --at, --cell, --area and --bbox");
  }
}

const grid::Level& wanted_level(const grid::Grid& grid, const GridOptions& options) {
  if (options.level.empty()) {
    throw Error(ErrorCode::usage, "no level is given", "add --level, such as --level 15min");
  }
  return option_value("--level", options.level, [&](const std::string& name) -> const grid::Level& {
    return grid.level(name);
  });
}

void run(const GridOptions& options, const Context& context) {
  require_one_source(options);
  const grid::Grid& grid =
      option_value("--system", options.system,
                   [](const std::string& name) -> const grid::Grid& { return grid::grid(name); });
  const formats::CellFormat format = cell_format(options.output.format());
  formats::Provenance provenance = context.provenance();

  // Everything that can be wrong with the options is found before the output is opened.
  std::function<void(const grid::CellSink&)> visit;
  if (!options.cell.empty()) {
    const grid::Cell cell = option_value("--cell", options.cell,
                                         [&](const std::string& name) { return grid.cell(name); });
    if (!options.level.empty() && wanted_level(grid, options).name != cell.level.name) {
      throw Error(ErrorCode::usage,
                  fmt::format("{} is a cell of level {}, not {}", cell.name, cell.level.name,
                              options.level),
                  "leave --level out, or name a cell of that level", "--level");
    }
    visit = [cell](const grid::CellSink& sink) { sink(cell); };
  } else if (!options.at.empty()) {
    const grid::Level& level = wanted_level(grid, options);
    const locate::Reading reading = option_value(
        "--at", options.at, [](const std::string& text) { return locate::read_position(text); });
    tell(fmt::format("--at read as {}", reading.read_as));
    const grid::Cell cell = grid.cell(grid.name_of(reading.position, level));
    visit = [cell](const grid::CellSink& sink) { sink(cell); };
  } else if (!options.area.empty()) {
    const grid::Level& level = wanted_level(grid, options);
    const formats::AreaFile area = formats::read_area_file(options.area);
    for (const std::string& remark : area.reading.remarks) {
      tell(fmt::format("{}: {}", options.area, remark));
    }
    provenance.inputs.push_back(area.digest);
    visit = [&grid, &level, region = area.reading.region](const grid::CellSink& sink) {
      grid.visit(region, level, grid::Selection::touching, sink);
    };
  } else {
    const grid::Level& level = wanted_level(grid, options);
    const grid::LatLonBox box = option_value("--bbox", options.bbox, parse_box);
    visit = [&grid, &level, box](const grid::CellSink& sink) {
      grid.visit(box, level, grid::Selection::touching, sink);
    };
  }
  options.output.write([&](formats::Sink& sink) {
    const auto writer = formats::make_cell_writer(sink, format, provenance);
    visit([&](const grid::Cell& cell) { writer->cell(cell); });
    writer->finish();
  });
}

}  // namespace

void add_grid_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand("grid", "Name and draw the cells of a shared grid");
  command->footer(
      "Levels: quarter 1deg, 30min, 15min, 7.5min, 3.75min; gars 30min, 15min, 5min.\n\n"
      "Examples:\n"
      "  sweepwright grid --system quarter --level 15min --at \"38-15.0N 117-02.5W\"\n"
      "  sweepwright grid --system gars --level 5min --bbox=-118,37,-117,38 -o cells.kml");
  auto options = std::make_shared<GridOptions>();
  std::string systems;
  for (const std::string_view name : grid::systems()) {
    systems += systems.empty() ? "" : "|";
    systems += name;
  }
  command->add_option("--system", options->system, "The grid")->required()->type_name(systems);
  command->add_option("--level", options->level, "Size of the cells")->type_name("LEVEL");
  command->add_option("--at", options->at, "The cell that holds this position")
      ->type_name("POSITION");
  command->add_option("--cell", options->cell, "The cell of this name")->type_name("NAME");
  command
      ->add_option("--area", options->area,
                   "The cells that touch the area in this GeoJSON or KML file")
      ->type_name("FILE");
  command->add_option("--bbox", options->bbox, "The cells that touch this box, in degrees")
      ->type_name("WEST,SOUTH,EAST,NORTH");
  options->output.add_to(*command, {"geojson", "kml", "csv", "json"});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
