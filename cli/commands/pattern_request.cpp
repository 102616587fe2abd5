#include "commands/pattern_request.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "common/option_value.hpp"
#include "common/output.hpp"
#include "sweepwright/formats/area_reader.hpp"
#include "sweepwright/pattern/creeping_line.hpp"
#include "sweepwright/pattern/expanding_square.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace sweepwright::cli {
namespace {

[[noreturn]] void usage(std::string message, std::string hint) {
  throw Error(ErrorCode::usage, std::move(message), std::move(hint));
}

int leg_count(const std::string& text) {
  return option_value("--legs", text, [](const std::string& legs) {
    return parse_whole_number(legs, 1, pattern::kMostLegs, "the number of legs");
  });
}

/// The number of search legs from --legs, or from --width.
int ladder_legs(const PatternRequest& request, Length spacing) {
  if (request.legs.empty() == request.width.empty()) {
    usage("a pattern from a start needs its extent across the legs",
          "give --legs or --width, one of them");
  }
  if (!request.legs.empty()) return leg_count(request.legs);
  return option_value("--width", request.width, [&](const std::string& text) {
    return pattern::legs_for_width(parse_length(text), spacing);
  });
}

pattern::Pattern from_start(const PatternRequest& request, pattern::Kind kind, Length spacing) {
  const Position start = position_option("--start", request.start);
  const TrueDirection track = request.track.empty()
                                  ? TrueDirection()
                                  : option_value("--track", request.track, parse_true_direction);
  const pattern::Turn turn = option_value("--turn", request.turn, pattern::parse_turn);
  if (kind == pattern::Kind::square) {
    if (request.legs.empty()) usage("an expanding square needs its number of legs", "add --legs");
    if (!request.length.empty() || !request.width.empty()) {
      usage("an expanding square has no leg length or width", "leave out --length and --width");
    }
    return pattern::make_expanding_square({start, track, spacing, leg_count(request.legs), turn});
  }
  if (request.length.empty()) usage("a pattern from a start needs its leg length", "add --length");
  const pattern::LadderFromStart ladder{start,
                                        track,
                                        option_value("--length", request.length, parse_length),
                                        spacing,
                                        ladder_legs(request, spacing),
                                        turn};
  return kind == pattern::Kind::creeping ? pattern::make_creeping_line(ladder)
                                         : pattern::make_parallel_track(ladder);
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

pattern::Pattern over_area(const PatternRequest& request, pattern::Kind kind, Length spacing,
                           const Region& region) {
  const auto track = optional_value("--track", request.track, parse_true_direction);
  const pattern::Turn turn = option_value("--turn", request.turn, pattern::parse_turn);
  if (!request.length.empty() || !request.width.empty()) {
    usage("the area gives the pattern's length and width",
          "leave out --length and --width, or --area");
  }
  if (kind == pattern::Kind::square) {
    const int legs =
        request.legs.empty() ? square_legs_for(region, spacing) : leg_count(request.legs);
    return pattern::make_expanding_square(
        {middle(region), track.value_or(TrueDirection()), spacing, legs, turn});
  }
  if (!request.legs.empty())
    usage("the area gives the number of legs", "leave out --legs, or --area");
  const pattern::RegionPatternOptions options{
      .spacing = spacing,
      .first_track = track,
      .first_turn = turn,
      .turn_room = option_value("--turn-room", request.turn_room, pattern::parse_turn_room)};
  return kind == pattern::Kind::creeping ? pattern::make_creeping_line(region, options)
                                         : pattern::make_parallel_track(region, options);
}

}  // namespace

void PatternRequest::add_to(CLI::App& command) {
  std::string kinds;
  for (const pattern::KindInfo& entry : pattern::kinds()) {
    kinds += kinds.empty() ? "" : "|";
    kinds += entry.name;
  }
  command.add_option("--kind", kind, "The pattern")->required()->type_name(kinds);
  command.add_option("--start", start, "Commence search point")->type_name("POSITION");
  command.add_option("--area", area, "Cover the area in this GeoJSON or KML file")
      ->type_name("FILE");
  command.add_option("--spacing", spacing, "Track spacing")->required()->type_name("LENGTH");
  command
      .add_option("--track", track,
                  "True direction of the first leg; without it north, or along the area's side")
      ->type_name("DEGREES");
  command.add_option("--length", length, "Length of a search leg")->type_name("LENGTH");
  command.add_option("--width", width, "Extent across the legs")->type_name("LENGTH");
  command.add_option("--legs", legs, "Number of search legs; of all legs for the square")
      ->type_name("N");
  command.add_option("--turn", turn, "Side of the first turn")
      ->type_name("left|right")
      ->capture_default_str();
  command
      .add_option("--turn-room", turn_room,
                  "Legs end half a spacing inside the area, or run to its edge")
      ->type_name("inside|outside")
      ->capture_default_str();
}

RequestedPattern make_requested_pattern(const PatternRequest& request,
                                        formats::Provenance& provenance) {
  const pattern::Kind kind = option_value("--kind", request.kind, pattern::parse_kind);
  if (request.start.empty() == request.area.empty()) {
    usage(request.start.empty() ? "no place is given" : "two places are given",
          "give --start or --area, one of them");
  }
  const Length spacing = option_value("--spacing", request.spacing, parse_length);
  std::optional<Region> area;
  if (!request.area.empty()) area = read_area(request.area, provenance);
  pattern::Pattern pattern =
      area ? over_area(request, kind, spacing, *area) : from_start(request, kind, spacing);
  for (const std::string& remark : pattern.remarks) tell(remark);
  return {std::move(pattern), std::move(area)};
}

}  // namespace sweepwright::cli
