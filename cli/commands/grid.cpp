// sweepwright grid: the cells of a grid at a place, of names, or of an area.
#include "sweepwright/grid/grid.hpp"

#include <fmt/format.h>

#include <cmath>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "common/box_option.hpp"
#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/cell_writer.hpp"
#include "sweepwright/formats/input_file.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/grid/chart.hpp"
#include "sweepwright/grid/clip.hpp"
#include "sweepwright/grid/local.hpp"
#include "sweepwright/grid/quarter.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::cli {
namespace {

constexpr std::string_view kLocal = "local";
constexpr std::string_view kQuarter = "quarter";

struct GridOptions {
  std::string system;
  std::string level;
  std::string at;
  std::vector<std::string> cells;
  std::string area;
  std::string bbox;
  std::string cells_as;
  std::string charts;
  std::string origin;
  std::string up = "000T";
  std::string cell_size;
  bool clip = false;
  bool centre_inside = false;
  bool label = false;
  bool hemisphere_letters = false;
  OutputOptions output;
};

/// A grid from the list, or one made for this run.
struct ChosenGrid {
  std::unique_ptr<grid::Grid> own;
  const grid::Grid* grid = nullptr;
};

/// A cell, and the values that go with it.
using CellTaker = std::function<void(const grid::Cell&, std::span<const formats::PropertyValue>)>;

/// Further digits of shares and areas mean nothing.
double millionths(double value) {
  return std::round(value * 1e6) / 1e6;
}

formats::CellFormat cell_format(const std::string& name) {
  if (name == "kml") return formats::CellFormat::kml;
  if (name == "csv") return formats::CellFormat::csv;
  if (name == "json") return formats::CellFormat::json;
  return formats::CellFormat::geojson;
}

ChosenGrid local_grid(const GridOptions& options) {
  if (options.origin.empty() || options.cell_size.empty()) {
    throw Error(ErrorCode::usage, "a local grid needs its origin and cell size",
                "add --origin and --cell-size, and --up when the grid is turned");
  }
  ChosenGrid chosen;
  chosen.own =
      grid::make_local_grid({.origin = position_option("--origin", options.origin),
                             .up = option_value("--up", options.up, parse_true_direction),
                             .cell = option_value("--cell-size", options.cell_size, parse_length)});
  chosen.grid = chosen.own.get();
  return chosen;
}

ChosenGrid chosen_grid(std::string_view option, const std::string& typed,
                       const GridOptions& options) {
  const std::string system = to_lower_ascii(typed);
  if (system == kLocal) return local_grid(options);
  ChosenGrid chosen;
  if (system == "chart" && !options.charts.empty()) {
    chosen.own = grid::make_chart_grid(
        grid::read_chart_sheets(formats::read_text_file(options.charts).text, options.charts));
    chosen.grid = chosen.own.get();
    return chosen;
  }
  if (system == kQuarter && options.hemisphere_letters) {
    chosen.grid = &grid::lettered_quarter_grid();
    return chosen;
  }
  chosen.grid = &option_value(option, system, [](const std::string& name) -> const grid::Grid& {
    return grid::grid(name);
  });
  return chosen;
}

void require_one_source(const GridOptions& options) {
  const int given =
      static_cast<int>(!options.at.empty()) + static_cast<int>(!options.cells.empty()) +
      static_cast<int>(!options.area.empty()) + static_cast<int>(!options.bbox.empty());
  if (given != 1) {
    throw Error(ErrorCode::usage, given == 0 ? "no place is given" : "more than one place is given",
                "give one of --at, --cell, --area and --bbox");
  }
  if (options.clip && options.area.empty()) {
    throw Error(ErrorCode::usage, "there is no area to cut the cells to",
                "give --area, or leave out --clip", "--clip");
  }
  if (options.hemisphere_letters && to_lower_ascii(options.system) != kQuarter &&
      to_lower_ascii(options.cells_as) != kQuarter) {
    throw Error(ErrorCode::usage, "only names of the one-degree grid have hemisphere letters",
                "choose --system quarter, or leave the option out", "--hemisphere-letters");
  }
}

grid::Level wanted_level(const grid::Grid& grid, const GridOptions& options) {
  if (options.level.empty() && grid.levels().size() == 1) return grid.levels().front();
  if (options.level.empty()) {
    throw Error(ErrorCode::usage, "no level is given", "add --level, such as --level 15min");
  }
  return option_value("--level", options.level,
                      [&](const std::string& name) { return grid.level(name); });
}

std::vector<grid::Cell> named_cells(const grid::Grid& grid, const GridOptions& options) {
  std::vector<grid::Cell> cells;
  for (const std::string& name : options.cells) {
    cells.push_back(
        option_value("--cell", name, [&](const std::string& text) { return grid.cell(text); }));
    if (options.cells_as.empty() && !options.level.empty() &&
        wanted_level(grid, options).name != cells.back().level.name) {
      throw Error(ErrorCode::usage,
                  fmt::format("{} is a cell of level {}, not {}", cells.back().name,
                              cells.back().level.name, options.level),
                  "leave --level out, or name a cell of that level", "--level");
    }
  }
  return cells;
}

/// What the command does, ready to run: everything that can be wrong with the options was found.
struct Job {
  formats::CellFile file;
  std::vector<formats::InputDigest> inputs;
  std::optional<Region> area;  ///< that the cells were asked for
  std::function<void(const CellTaker&)> visit;
};

Job area_job(const grid::Grid& grid, const GridOptions& options) {
  const grid::Level level = wanted_level(grid, options);
  const formats::AreaFile area = formats::read_area_file(options.area);
  for (const std::string& remark : area.reading.remarks)
    tell(fmt::format("{}: {}", options.area, remark));
  const grid::Selection selection =
      options.centre_inside ? grid::Selection::centre_inside : grid::Selection::touching;
  Job job;
  job.inputs = {area.digest};
  job.area = area.reading.region;
  if (!options.clip) {
    job.visit = [&grid, level, selection, region = area.reading.region](const CellTaker& take) {
      grid.visit(region, level, selection, [&](const grid::Cell& cell) { take(cell, {}); });
    };
    return job;
  }
  job.file.more = {"share"};
  job.visit = [&grid, level, region = area.reading.region](const CellTaker& take) {
    grid::visit_clipped(grid, region, level, [&](const grid::ClippedCell& part) {
      const std::vector<formats::PropertyValue> share{
          part.whole ? 1.0 : millionths(part.area / grid::area(part.cell))};
      grid::Cell cut = part.cell;
      if (!part.whole) {
        cut.box.reset();
        cut.region = part.ground;
      }
      take(cut, share);
    });
  };
  return job;
}

Job cells_job(const grid::Grid& grid, const GridOptions& options) {
  const std::vector<grid::Cell> cells = named_cells(grid, options);
  Job job;
  if (options.cells_as.empty()) {
    job.visit = [cells](const CellTaker& take) {
      for (const grid::Cell& cell : cells) take(cell, {});
    };
    return job;
  }
  const auto other =
      std::make_shared<ChosenGrid>(chosen_grid("--cells-as", options.cells_as, options));
  const grid::Level level = wanted_level(*other->grid, options);
  job.file.more = {"share", "shared_km2", "shared_nm2"};
  job.visit = [cells, other, level](const CellTaker& take) {
    for (const grid::SharedCell& shared : grid::convert_cells(cells, *other->grid, level)) {
      take(shared.cell, std::vector<formats::PropertyValue>{
                            millionths(shared.share), millionths(shared.shared.square_kilometres()),
                            millionths(shared.shared.square_nautical_miles())});
    }
  };
  return job;
}

/// The cell that holds a place, or without a level those of all levels.
Job place_job(const grid::Grid& grid, const GridOptions& options) {
  const std::vector<grid::Level> levels =
      options.level.empty() ? grid.levels() : std::vector{wanted_level(grid, options)};
  const Position place = position_option("--at", options.at);
  std::vector<grid::Cell> cells;
  for (const grid::Level& level : levels) cells.push_back(grid.cell(grid.name_of(place, level)));
  Job job;
  job.visit = [cells](const CellTaker& take) {
    for (const grid::Cell& cell : cells) take(cell, {});
  };
  return job;
}

Job job_for(const grid::Grid& grid, const GridOptions& options) {
  if (!options.cells.empty()) return cells_job(grid, options);
  if (!options.cells_as.empty()) {
    throw Error(ErrorCode::usage, "no cells are given to convert", "name them with --cell",
                "--cells-as");
  }
  if (!options.area.empty()) return area_job(grid, options);
  if (!options.at.empty()) return place_job(grid, options);
  const grid::Level level = wanted_level(grid, options);
  Job job;
  const grid::LatLonBox box = option_value("--bbox", options.bbox, parse_box);
  const grid::Selection selection =
      options.centre_inside ? grid::Selection::centre_inside : grid::Selection::touching;
  job.visit = [&grid, level, box, selection](const CellTaker& take) {
    grid.visit(box, level, selection, [&](const grid::Cell& cell) { take(cell, {}); });
  };
  return job;
}

formats::Drawing draw(const Job& job) {
  std::vector<grid::Cell> cells;
  job.visit([&](const grid::Cell& cell, std::span<const formats::PropertyValue>) {
    cells.push_back(cell);
    if (cells.size() > formats::kMostCellsOnMap) {
      throw Error(
          ErrorCode::value,
          fmt::format("a picture of more than {} cells cannot be read", formats::kMostCellsOnMap),
          "ask for a coarser level or a smaller area");
    }
  });
  return formats::draw_cells_map(cells, job.area, kPictureSize);
}

void run(const GridOptions& options, const Context& context) {
  require_one_source(options);
  const ChosenGrid chosen = chosen_grid("--system", options.system, options);
  Job job = job_for(*chosen.grid, options);
  job.file.format = cell_format(options.output.format());
  job.file.labels = options.label;
  formats::Provenance provenance = context.provenance();
  provenance.inputs = job.inputs;
  const bool picture = options.output.format() == kPicture;
  options.output.write([&](formats::Sink& sink) {
    if (picture) {
      sink.write(formats::write_svg(draw(job)));
      return;
    }
    const auto writer = formats::make_cell_writer(sink, job.file, provenance);
    job.visit([&](const grid::Cell& cell, std::span<const formats::PropertyValue> more) {
      writer->cell(cell, more);
    });
    writer->finish();
  });
}

std::string system_names() {
  std::string names;
  for (const std::string_view name : grid::systems()) {
    names += name;
    names += '|';
  }
  return names + std::string(kLocal);
}

std::string levels_text() {
  std::string text = "Levels:";
  for (const std::string_view name : grid::systems()) {
    text += fmt::format(" {}", name);
    for (const grid::Level& level : grid::grid(name).levels())
      text += fmt::format(" {}", level.name);
    text += ';';
  }
  text.back() = '.';
  return text;
}

}  // namespace

void add_grid_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand("grid", "Name and draw the cells of a shared grid");
  command->footer(
      levels_text() +
      "\n\nExamples:\n"
      "  sweepwright grid --system quarter --level 15min --at \"38-15.0N 117-02.5W\"\n"
      "  sweepwright grid --system gars --at \"38-15.0N 117-02.5W\" --format csv\n"
      "  sweepwright grid --system gars --level 5min --bbox -118,37,-117,38 -o cells.kml\n"
      "  sweepwright grid --system mgrs --level 1km --area area.geojson --clip --label\n"
      "  sweepwright grid --system quarter --cell 38/117D --cells-as gars --level 5min\n\n" +
      caution_lines());
  auto options = std::make_shared<GridOptions>();
  command->add_option("--system", options->system, "The grid")
      ->required()
      ->type_name(system_names());
  command->add_option("--level", options->level, "Size of the cells")->type_name("LEVEL");
  command
      ->add_option("--at", options->at,
                   "The cell that holds this position; without --level the cells of all levels")
      ->type_name("POSITION");
  command->add_option("--cell", options->cells, "The cell of this name; may be given several times")
      ->type_name("NAME")
      ->take_all()
      ->expected(1);
  command
      ->add_option("--area", options->area,
                   "The cells that touch the area in this GeoJSON or KML file")
      ->type_name("FILE");
  command->add_option("--bbox", options->bbox, "The cells that touch this box, in degrees")
      ->type_name("WEST,SOUTH,EAST,NORTH");
  command->add_flag("--centre-inside", options->centre_inside,
                    "Only the cells whose middle lies in the area or box");
  command->add_flag("--clip", options->clip, "Cut the cells to the area");
  command->add_flag("--label", options->label, "Add a point with the name of each cell");
  command->add_flag("--hemisphere-letters", options->hemisphere_letters,
                    "One-degree grid: N, S, E, W in every name, such as 38N/117WDB");
  command
      ->add_option("--cells-as", options->cells_as,
                   "Name the ground of the cells of --cell in this grid, with the shared area")
      ->type_name("SYSTEM");
  command
      ->add_option("--charts", options->charts,
                   "Table of chart sheets in place of the built-in one")
      ->type_name("FILE");
  command->add_option("--origin", options->origin, "Local grid: upper left corner of A1")
      ->type_name("POSITION");
  command->add_option("--up", options->up, "Local grid: true direction of its upper side")
      ->type_name("DEGREES")
      ->capture_default_str();
  command->add_option("--cell-size", options->cell_size, "Local grid: side of a cell")
      ->type_name("LENGTH");
  options->output.add_to(*command, {"geojson", "kml", "csv", "json", std::string(kPicture)});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
