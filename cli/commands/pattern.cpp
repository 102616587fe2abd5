// sweepwright pattern: the legs of one pattern, from a start or over an area.
#include "sweepwright/pattern/pattern.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>

#include "common/command.hpp"
#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/pattern_writer.hpp"
#include "sweepwright/formats/svg_writer.hpp"
#include "sweepwright/pattern/creeping_line.hpp"
#include "sweepwright/pattern/expanding_square.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::cli {
namespace {

struct PatternOptions {
  std::string kind;
  std::string start;
  std::string area;
  std::string spacing;
  std::string track;
  std::string length;
  std::string width;
  std::string legs;
  std::string turn = "right";
  std::string turn_room = "inside";
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

[[noreturn]] void usage(std::string message, std::string hint) {
  throw Error(ErrorCode::usage, std::move(message), std::move(hint));
}

int leg_count(const std::string& text) {
  return option_value("--legs", text, [](const std::string& legs) {
    return parse_whole_number(legs, 1, pattern::kMostLegs, "the number of legs");
  });
}

/// The number of search legs from --legs, or from --width.
int ladder_legs(const PatternOptions& options, Length spacing) {
  if (options.legs.empty() == options.width.empty()) {
    usage("a pattern from a start needs its extent across the legs",
          "give --legs or --width, one of them");
  }
  if (!options.legs.empty()) return leg_count(options.legs);
  return option_value("--width", options.width, [&](const std::string& text) {
    return pattern::legs_for_width(parse_length(text), spacing);
  });
}

pattern::Pattern from_start(const PatternOptions& options, pattern::Kind kind, Length spacing) {
  const Position start = position_option("--start", options.start);
  const TrueDirection track = options.track.empty()
                                  ? TrueDirection()
                                  : option_value("--track", options.track, parse_true_direction);
  const pattern::Turn turn = option_value("--turn", options.turn, pattern::parse_turn);
  if (kind == pattern::Kind::square) {
    if (options.legs.empty()) usage("an expanding square needs its number of legs", "add --legs");
    if (!options.length.empty() || !options.width.empty()) {
      usage("an expanding square has no leg length or width", "leave out --length and --width");
    }
    return pattern::make_expanding_square({start, track, spacing, leg_count(options.legs), turn});
  }
  if (options.length.empty()) usage("a pattern from a start needs its leg length", "add --length");
  const pattern::LadderFromStart request{start,
                                         track,
                                         option_value("--length", options.length, parse_length),
                                         spacing,
                                         ladder_legs(options, spacing),
                                         turn};
  return kind == pattern::Kind::creeping ? pattern::make_creeping_line(request)
                                         : pattern::make_parallel_track(request);
}

/// An expanding square over an area commences at the area's middle and grows until it fills it.
int square_legs_for(const Region& region, Length spacing) {
  return std::min(1000, 2 * pattern::legs_for_width(
                                Length::metres(std::sqrt(area(region).square_metres())), spacing) -
                            1);
}

Region read_area(const std::string& path, formats::Provenance& provenance) {
  formats::AreaFile area = formats::read_area_file(path);
  for (const std::string& remark : area.reading.remarks) tell(fmt::format("{}: {}", path, remark));
  provenance.inputs.push_back(area.digest);
  return std::move(area.reading.region);
}

pattern::Pattern over_area(const PatternOptions& options, pattern::Kind kind, Length spacing,
                           const Region& region) {
  const auto track = optional_value("--track", options.track, parse_true_direction);
  const pattern::Turn turn = option_value("--turn", options.turn, pattern::parse_turn);
  if (!options.length.empty() || !options.width.empty()) {
    usage("the area gives the pattern's length and width",
          "leave out --length and --width, or --area");
  }
  if (kind == pattern::Kind::square) {
    const int legs =
        options.legs.empty() ? square_legs_for(region, spacing) : leg_count(options.legs);
    return pattern::make_expanding_square(
        {middle(region), track.value_or(TrueDirection()), spacing, legs, turn});
  }
  if (!options.legs.empty())
    usage("the area gives the number of legs", "leave out --legs, or --area");
  const pattern::RegionPatternOptions request{
      .spacing = spacing,
      .first_track = track,
      .first_turn = turn,
      .turn_room = option_value("--turn-room", options.turn_room, pattern::parse_turn_room)};
  return kind == pattern::Kind::creeping ? pattern::make_creeping_line(region, request)
                                         : pattern::make_parallel_track(region, request);
}

void run(const PatternOptions& options, const Context& context) {
  const pattern::Kind kind = option_value("--kind", options.kind, pattern::parse_kind);
  if (options.start.empty() == options.area.empty()) {
    usage(options.start.empty() ? "no place is given" : "two places are given",
          "give --start or --area, one of them");
  }
  const Length spacing = option_value("--spacing", options.spacing, parse_length);
  const Speed speed = option_value("--speed", options.speed, parse_speed);
  const std::string format = options.output.format();
  formats::Provenance provenance = context.provenance();
  std::optional<Region> area;
  if (!options.area.empty()) area = read_area(options.area, provenance);
  const pattern::Pattern pattern =
      area ? over_area(options, kind, spacing, *area) : from_start(options, kind, spacing);
  for (const std::string& remark : pattern.remarks) tell(remark);
  formats::leg_rows(pattern, speed);  // refuses a speed of 0 before the output is opened
  options.output.write([&](formats::Sink& sink) {
    if (format == kPicture) {
      sink.write(formats::write_svg(formats::draw_pattern_map(pattern, area, kPictureSize)));
    } else {
      formats::write_pattern(sink, pattern, speed, pattern_format(format), provenance);
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
  std::string kinds;
  for (const pattern::KindInfo& entry : pattern::kinds()) {
    kinds += kinds.empty() ? "" : "|";
    kinds += entry.name;
  }
  command->add_option("--kind", options->kind, "The pattern")->required()->type_name(kinds);
  command->add_option("--start", options->start, "Commence search point")->type_name("POSITION");
  command->add_option("--area", options->area, "Cover the area in this GeoJSON or KML file")
      ->type_name("FILE");
  command->add_option("--spacing", options->spacing, "Track spacing")
      ->required()
      ->type_name("LENGTH");
  command
      ->add_option("--track", options->track,
                   "True direction of the first leg; without it north, or along the area's side")
      ->type_name("DEGREES");
  command->add_option("--length", options->length, "Length of a search leg")->type_name("LENGTH");
  command->add_option("--width", options->width, "Extent across the legs")->type_name("LENGTH");
  command->add_option("--legs", options->legs, "Number of search legs; of all legs for the square")
      ->type_name("N");
  command->add_option("--turn", options->turn, "Side of the first turn")
      ->type_name("left|right")
      ->capture_default_str();
  command
      ->add_option("--turn-room", options->turn_room,
                   "Legs end half a spacing inside the area, or run to its edge")
      ->type_name("inside|outside")
      ->capture_default_str();
  command->add_option("--speed", options->speed, "Speed over the ground")
      ->required()
      ->type_name("SPEED");
  options->output.add_to(*command, {"geojson", "kml", "gpx", "csv", "json", std::string(kPicture)});
  command->callback([options, &context] { run(*options, context); });
}

}  // namespace sweepwright::cli
