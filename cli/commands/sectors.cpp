// sweepwright sectors: cuts ground into one sector for each unit.
#include "sweepwright/sector/sectors.hpp"

#include <fmt/format.h>

#include <memory>
#include <optional>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/input_file.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/sector_writer.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/formats/unit_area_reader.hpp"

namespace sweepwright::cli {
namespace {

struct SectorOptions {
  std::string area;
  std::string units;
  std::vector<std::string> unit;
  std::string direction;
  std::string day = "A";
  OutputOptions output;
};

/// What is to be divided, and what goes on with each unit's ground.
struct Task {
  std::vector<sector::SharedGround> grounds;
  std::vector<std::vector<formats::Property>> kept;  ///< one list for each unit
};

formats::SectorFormat sector_format(const std::string& name) {
  if (name == "kml") return formats::SectorFormat::kml;
  if (name == "csv") return formats::SectorFormat::csv;
  if (name == "json") return formats::SectorFormat::json;
  return formats::SectorFormat::geojson;
}

/// `Kestrel 1,2.5`: what stands after the last comma is the share.
sector::UnitShare parse_unit(const std::string& text) {
  const std::size_t comma = text.rfind(',');
  const std::string name(trimmed(std::string_view(text).substr(0, comma)));
  if (comma == std::string::npos || name.empty()) {
    throw Error(ErrorCode::value, fmt::format("'{}' is not a unit and its share", printable(text)),
                "write the name, a comma and what it can cover, such as \"Kestrel 1,2.5\"");
  }
  const double share = parse_number(text.substr(comma + 1), "the share");
  if (!(share > 0)) {
    throw Error(ErrorCode::value, fmt::format("the share of {} is {}", printable(name), share),
                "give a number above 0: effort, hours, or parts of the whole");
  }
  return {name, share};
}

std::vector<sector::UnitShare> units(const SectorOptions& options) {
  if (!options.units.empty() && !options.unit.empty()) {
    throw Error(ErrorCode::usage, "--units and --unit both say who searches", "give one of them");
  }
  std::vector<sector::UnitShare> list;
  for (const std::string& text : options.unit) {
    list.push_back(option_value("--unit", text, parse_unit));
  }
  if (!options.units.empty()) {
    const int count = option_value("--units", options.units, [](const std::string& text) {
      return parse_whole_number(text, 1, static_cast<int>(sector::kMostUnits),
                                "the number of units");
    });
    for (int i = 1; i <= count; ++i) list.push_back({fmt::format("Unit {}", i), 1});
  }
  return list;
}

Task task(const std::string& text, const std::vector<sector::UnitShare>& named,
          std::string_view place) {
  const formats::UnitAreas given = formats::parse_unit_areas(text);
  if (given.areas.empty()) {
    if (named.empty()) {
      throw Error(ErrorCode::usage, "no unit is given, and the area names none",
                  "add --units or --unit");
    }
    formats::AreaReading whole = formats::parse_area(text);
    for (const std::string& remark : whole.remarks) tell(fmt::format("{}: {}", place, remark));
    return {{{std::move(whole.region), named}},
            std::vector<std::vector<formats::Property>>(named.size())};
  }
  if (!named.empty()) {
    throw Error(ErrorCode::usage, "the area's features name their units already",
                "leave out --units and --unit, or take `unit` out of the features");
  }
  for (const std::string& remark : given.remarks) tell(fmt::format("{}: {}", place, remark));
  Task task;
  for (const formats::UnitArea& area : given.areas) {
    task.grounds.push_back({area.region, {{area.unit, 1}}});
    task.kept.push_back(area.kept);
  }
  return task;
}

/// What a planner must know of the sectors.
std::vector<std::string> remarks(const std::vector<sector::Sector>& sectors) {
  std::vector<std::string> list;
  for (const sector::Sector& sector : sectors) {
    if (sector.region.polygons.size() < 2) continue;
    list.push_back(
        fmt::format("sector {} is in {} parts: its crew crosses other ground between them",
                    sector.name, sector.region.polygons.size()));
  }
  for (const auto& [a, b] : sector::overlaps(sectors)) {
    list.push_back(
        fmt::format("sectors {} and {} share ground: keep the crews apart in height or "
                    "in time",
                    sectors[a].name, sectors[b].name));
  }
  return list;
}

void run(const SectorOptions& options, const Context& context) {
  const std::string format = options.output.format();
  const std::string day = option_value("--day", options.day, sector::parse_day_letter);
  const auto direction = optional_value("--direction", options.direction, parse_true_direction);
  const std::vector<sector::UnitShare> named = units(options);
  const formats::InputText input = formats::read_text_file(options.area);
  const std::string place = options.area == "-" ? "standard input" : printable(options.area);
  const Task asked = option_value(
      place, input.text, [&](const std::string& text) { return task(text, named, place); });
  const std::vector<sector::Sector> sectors = sector::make_sectors(asked.grounds, day, direction);
  const std::vector<std::string> notes = remarks(sectors);
  for (const std::string& note : notes) tell(note);

  std::vector<formats::SectorRow> rows;
  for (std::size_t i = 0; i < sectors.size(); ++i) rows.push_back({sectors[i], asked.kept[i]});
  formats::Provenance provenance = context.provenance();
  provenance.inputs.push_back(input.digest);
  options.output.write([&](formats::Sink& sink) {
    if (format == kPicture) {
      sink.write(formats::write_svg(formats::draw_sectors_map(sectors, kPictureSize)));
    } else {
      formats::write_sectors(sink, rows, notes, sector_format(format), provenance);
    }
  });
}

}  // namespace

void add_sectors_command(CLI::App& app, Context& context) {
  CLI::App* command = app.add_subcommand("sectors", "Cut an area into one sector for each unit");
  command->footer(
      "Planning aid only, not for navigation: sectors look at ground, not at terrain, airspace or\n"
      "notices; check them. Local rules apply and the pilot in command decides.\n\n"
      "Examples:\n"
      "  sweepwright sectors --area area.geojson --units 4 -o sectors.kml\n"
      "  sweepwright sectors --area area.geojson --unit \"Kestrel 1,2.5\" --unit \"Tern 2,4\" \\\n"
      "    --direction 045T --day B\n"
      "  sweepwright effort belief.geojson ... --rectangles | sweepwright sectors --area -");
  auto options = std::make_shared<SectorOptions>();
  command
      ->add_option("--area", options->area,
                   "Area to divide, or areas with a `unit` each: GeoJSON or KML; - is standard "
                   "input")
      ->required()
      ->type_name("FILE");
  command->add_option("--units", options->units, "Number of units, all alike")->type_name("N");
  command
      ->add_option("--unit", options->unit,
                   "A unit and what it can cover next to the others (effort, hours); once for each")
      ->type_name("NAME,SHARE");
  command
      ->add_option(
          "--direction", options->direction,
          "True direction of the legs, for sun, swell or terrain; else along the long side")
      ->type_name("DEGREES");
  command->add_option("--day", options->day, "Letter of the search day, first part of the names")
      ->type_name("LETTER")
      ->capture_default_str();
  options->output.add_to(*command, {"geojson", "kml", "csv", "json", std::string(kPicture)});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
