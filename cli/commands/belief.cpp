// sweepwright belief: where the object can be, cell by cell, and what searches in vain leave of it.
#include "sweepwright/belief/belief.hpp"

#include <fmt/format.h>

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "commands/belief_sources.hpp"
#include "common/box_option.hpp"
#include "common/command.hpp"
#include "common/option_texts.hpp"
#include "common/output.hpp"
#include "sweepwright/belief/scenario.hpp"
#include "sweepwright/belief/update.hpp"
#include "sweepwright/formats/belief_map.hpp"
#include "sweepwright/formats/belief_reader.hpp"
#include "sweepwright/formats/belief_working.hpp"
#include "sweepwright/formats/belief_writer.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/input_file.hpp"
#include "sweepwright/formats/mission_reader.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/grid/systems.hpp"

namespace sweepwright::cli {
namespace {

struct BeliefOptions {
  OptionTexts texts;
  std::string mission;
  std::vector<std::string> updates;
  bool rings = false;
  OutputOptions output;
};

/// The belief before and after the searches, and what it was made of.
struct Made {
  belief::Belief belief;
  std::vector<belief::Scenario> scenarios;
  std::vector<formats::FailedSearch> searches;
  std::vector<formats::InputDigest> inputs;
};

std::string same(const std::string& text) {
  return text;
}

std::reference_wrapper<const grid::Grid> known_grid(const std::string& name) {
  return grid::grid(name);
}

void require_one_start(const BeliefOptions& options, bool source) {
  const int given = static_cast<int>(source) + static_cast<int>(!options.mission.empty()) +
                    static_cast<int>(options.texts.has("--from"));
  if (given == 1) return;
  throw Error(ErrorCode::usage,
              given == 0 ? "nothing to believe in is given" : "more than one beginning is given",
              "give one of --datum, --route, --area, --probabilities, --from and a mission file");
}

Made from_file(BeliefOptions& options) {
  const formats::BeliefFile file = formats::read_belief_file_and_digest(
      options.texts.needed("--from", "a belief in a file", same));
  options.texts.refuse_unread("a belief in a file");
  return {file.belief, {}, {}, {file.digest}};
}

Made over_cells(std::vector<belief::Scenario> scenarios, const grid::Grid& grid,
                const grid::Level& level, const std::optional<grid::LatLonBox>& box) {
  Made made;
  made.belief = box ? belief::make_belief(scenarios, grid, level, *box)
                    : belief::make_belief(scenarios, grid, level);
  made.scenarios = std::move(scenarios);
  return made;
}

/// The scenarios of a mission over its own grid, or over that of --grid and --level.
Made from_mission(BeliefOptions& options) {
  const plan::Mission mission = formats::read_mission(options.mission);
  for (const std::string& remark : mission.input_remarks) tell(remark);
  if (mission.scenarios.empty()) {
    throw Error(ErrorCode::value, "the mission has no belief",
                "add the list 'belief' (docs/reference/mission-file.md)", options.mission);
  }
  const bool own_grid = !options.texts.has("--grid");
  const grid::Grid& grid = own_grid ? grid::grid(mission.grid.system)
                                    : options.texts.needed("--grid", "a belief", known_grid).get();
  const grid::Level level =
      own_grid && !options.texts.has("--level")
          ? grid.level(mission.grid.level)
          : options.texts.needed("--level", "a belief",
                                 [&](const std::string& name) { return grid.level(name); });
  const auto box = options.texts.optional("--bbox", parse_box);
  options.texts.refuse_unread("a mission");
  Made made = over_cells(mission.scenarios, grid, level, box);
  for (const plan::InputFile& file : mission.inputs)
    made.inputs.push_back({file.name, file.digest});
  return made;
}

Made from_scenarios(BeliefOptions& options) {
  const grid::Grid& grid = options.texts.needed("--grid", "a belief", known_grid);
  const grid::Level level = options.texts.needed(
      "--level", "a belief", [&](const std::string& name) { return grid.level(name); });
  GivenSource given = given_source(options.texts, std::string(grid.system()));
  const auto box = options.texts.optional("--bbox", parse_box);
  options.texts.refuse_unread("this source");
  Made made = over_cells(std::move(given.scenarios), grid, level, box);
  made.inputs = std::move(given.inputs);
  return made;
}

void apply_searches(const std::vector<std::string>& files, Made& made) {
  for (const std::string& path : files) {
    const formats::InputText file = formats::read_text_file(path);
    try {
      const std::vector<double> pods = formats::parse_cell_pods(file.text, made.belief.cells);
      belief::Updated after = belief::updated(std::move(made.belief), pods);
      made.belief = std::move(after.belief);
      made.searches.push_back({path, after.success});
    } catch (const Error& error) {
      throw error.at(path);
    }
    made.inputs.push_back(file.digest);
    tell(fmt::format("{}: probability of success {:.4f}, cumulative {:.4f}", path,
                     made.searches.back().success, made.belief.cumulative_success));
  }
}

formats::BeliefFormat belief_format(const std::string& name) {
  if (name == "kml") return formats::BeliefFormat::kml;
  if (name == "csv") return formats::BeliefFormat::csv;
  if (name == "json") return formats::BeliefFormat::json;
  return formats::BeliefFormat::geojson;
}

formats::BeliefExtras extras(const Made& made, bool rings) {
  formats::BeliefExtras extras;
  if (!made.scenarios.empty()) {
    extras.members.push_back({"scenarios", formats::scenarios_json(made.scenarios)});
  }
  if (!made.searches.empty()) {
    extras.members.push_back({"searches", formats::searches_json(made.searches)});
  }
  if (rings) extras.lines = formats::containment_lines(made.scenarios);
  return extras;
}

std::string held(std::size_t cells) {
  return cells == 1 ? "1 cell holds" : fmt::format("{} cells hold", cells);
}

void run(BeliefOptions& options, const Context& context) {
  bool source = false;
  for (const char* name : {"--datum", "--route", "--area", "--probabilities"}) {
    source = source || options.texts.has(name);
  }
  require_one_start(options, source);
  Made made = !options.mission.empty()      ? from_mission(options)
              : options.texts.has("--from") ? from_file(options)
                                            : from_scenarios(options);
  apply_searches(options.updates, made);
  tell(fmt::format("{} {:.3f} %, outside lies {:.3f} %", held(made.belief.cells.size()),
                   100 * (1 - made.belief.outside), 100 * made.belief.outside));
  formats::Provenance provenance = context.provenance();
  provenance.inputs = made.inputs;
  const formats::BeliefExtras more = extras(made, options.rings);
  options.output.write([&](formats::Sink& sink) {
    if (options.output.format() == kPicture) {
      sink.write(
          formats::write_svg(formats::draw_belief_map(made.belief, more.lines, kPictureSize)));
      return;
    }
    formats::write_belief(sink, made.belief, belief_format(options.output.format()), provenance,
                          more);
  });
}

std::string footer() {
  std::string text =
      "Each cell gets its probability of containment, integrated over its ground; `outside` is "
      "what\n"
      "lies in no cell. Without --bbox the cells are those that hold 99.9 % of each source.\n\n"
      "Examples:\n"
      "  sweepwright belief --grid gars --level 5min --datum \"38-15.0N 117-02.5W\" --error 5NM "
      "-o belief.geojson\n"
      "  sweepwright belief --grid quarter --level 15min --route route.txt --spread 5NM -o "
      "belief.svg\n"
      "  sweepwright belief mission.json -o belief.kml\n"
      "  sweepwright belief --from belief.geojson --update searched.csv -o after.geojson\n\n";
  for (const std::string_view caution : formats::kCautions) text += fmt::format("{}\n", caution);
  return text;
}

std::string system_names() {
  std::string names;
  for (const std::string_view name : grid::systems()) {
    names += (names.empty() ? "" : "|") + std::string(name);
  }
  return names;
}

}  // namespace

void add_belief_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand(
      "belief", "Map the probability of containment, and what searches in vain leave of it");
  command->footer(footer());
  auto options = std::make_shared<BeliefOptions>();
  command->add_option("mission", options->mission, "Mission file with a belief")->type_name("FILE");
  options->texts.add(*command, "--grid", "The grid whose cells carry the belief", system_names());
  options->texts.add(*command, "--level", "Size of the cells", "LEVEL");
  options->texts.add(*command, "--bbox", "All cells that touch this box, in degrees",
                     "WEST,SOUTH,EAST,NORTH");
  add_source_options(*command, options->texts);
  options->texts.add(*command, "--from", "Start from a belief that this command wrote", "FILE");
  command
      ->add_option("--update", options->updates,
                   "A search that found nothing: CSV cell,pod or GeoJSON with `pod` of each cell "
                   "searched; may be given several times")
      ->type_name("FILE")
      ->take_all()
      ->expected(1);
  command->add_flag("--rings", options->rings,
                    "Add the lines that hold 50, 90 and 95 % of each datum");
  options->output.add_to(*command, {"geojson", "kml", "csv", "json", std::string(kPicture)});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
