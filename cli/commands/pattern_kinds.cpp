#include "commands/pattern_kinds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "sweepwright/base/text.hpp"
#include "sweepwright/flight/ladder_speeds.hpp"
#include "sweepwright/pattern/contour_search.hpp"
#include "sweepwright/pattern/coordinated_creeping_line.hpp"
#include "sweepwright/pattern/creeping_line.hpp"
#include "sweepwright/pattern/expanding_square.hpp"
#include "sweepwright/pattern/multi_unit_parallel.hpp"
#include "sweepwright/pattern/parallel_track.hpp"
#include "sweepwright/pattern/sector_search.hpp"
#include "sweepwright/pattern/track_line.hpp"
#include "sweepwright/pattern/waypoints.hpp"

namespace sweepwright::cli {
namespace {

using pattern::Pattern;

[[noreturn]] void usage(std::string message, std::string hint) {
  throw Error(ErrorCode::usage, std::move(message), std::move(hint));
}

/// A whole number from 1, for an option.
auto parse_count(std::string_view what, int most) {
  return [=](const std::string& text) { return parse_whole_number(text, 1, most, what); };
}

int parse_leg_count(const std::string& text) {
  return parse_whole_number(text, 1, pattern::kMostLegs, "the number of legs");
}

/// `an expanding square`, for messages.
std::string in_words(pattern::Kind kind) {
  const std::string title = to_lower_ascii(pattern::info(kind).title);
  if (kind == pattern::Kind::waypoints) return "a pattern of waypoints";
  const bool vowel = std::string_view("aeiou").find(title.front()) != std::string_view::npos;
  return fmt::format("{} {}", vowel ? "an" : "a", title);
}

Length spacing(OptionTexts& options, pattern::Kind kind) {
  return options.needed("--spacing", in_words(kind), parse_length);
}

TrueDirection first_track(OptionTexts& options) {
  return options.optional("--track", parse_true_direction).value_or(TrueDirection());
}

pattern::Turn first_turn(OptionTexts& options) {
  return options.optional("--turn", pattern::parse_turn).value_or(pattern::Turn::right);
}

/// Of options that give the same thing, the one that was typed.
std::string one_of(const OptionTexts& options, std::initializer_list<std::string> choices,
                   const std::string& what) {
  std::string found;
  std::string all;
  for (const std::string& choice : choices) {
    all += (all.empty() ? "" : " or ") + choice;
    if (!options.has(choice)) continue;
    if (!found.empty())
      usage(fmt::format("{} and {} both give {}", found, choice, what), "leave one of them out");
    found = choice;
  }
  if (found.empty()) usage(fmt::format("{} is missing", what), fmt::format("give {}", all));
  return found;
}

/// The number of search legs from --legs, or from --width.
int ladder_legs(OptionTexts& options, Length spacing) {
  if (one_of(options, {"--legs", "--width"}, "the extent across the legs") == "--legs") {
    return options.needed("--legs", "", parse_leg_count);
  }
  return options.needed("--width", "", [&](const std::string& text) {
    return pattern::legs_for_width(parse_length(text), spacing);
  });
}

pattern::LadderFromStart ladder_from_start(OptionTexts& options, pattern::Kind kind) {
  pattern::LadderFromStart ladder;
  ladder.spacing = spacing(options, kind);
  ladder.start = options.position("--start", in_words(kind) + " without an area");
  ladder.first_track = first_track(options);
  ladder.first_turn = first_turn(options);
  ladder.leg_length = options.needed("--length", in_words(kind) + " from a start", parse_length);
  ladder.legs = ladder_legs(options, ladder.spacing);
  return ladder;
}

pattern::RegionPatternOptions ladder_in_area(OptionTexts& options, pattern::Kind kind) {
  if (options.has("--commence") && options.has("--turn")) {
    usage("--commence and --turn both choose the corner", "leave one of them out");
  }
  return {.spacing = spacing(options, kind),
          .first_track = options.optional("--track", parse_true_direction),
          .first_turn = first_turn(options),
          .turn_room = options.optional("--turn-room", pattern::parse_turn_room)
                           .value_or(pattern::TurnRoom::inside),
          .commence = options.optional("--commence", pattern::parse_corner)};
}

Pattern parallel_track(OptionTexts& options, const PatternGround& ground) {
  const auto kind = pattern::Kind::parallel;
  return ground.area ? pattern::make_parallel_track(*ground.area, ladder_in_area(options, kind))
                     : pattern::make_parallel_track(ladder_from_start(options, kind));
}

Pattern creeping_line(OptionTexts& options, const PatternGround& ground) {
  const auto kind = pattern::Kind::creeping;
  return ground.area ? pattern::make_creeping_line(*ground.area, ladder_in_area(options, kind))
                     : pattern::make_creeping_line(ladder_from_start(options, kind));
}

/// Into the wind, or down the drift.
TrueDirection first_track_in(pattern::FirstLeg first_leg, const OptionTexts& options,
                             const PatternGround& ground, Position datum) {
  if (options.has("--track")) {
    usage("--first-leg and --track both choose the first leg", "leave one of them out");
  }
  const bool upwind = first_leg == pattern::FirstLeg::upwind;
  if (!ground.flown || !(upwind ? ground.flown->wind.is_given() : !ground.flown->drift.empty())) {
    usage(fmt::format("a first leg {} needs to know the {}",
                      upwind ? "into the wind" : "down the drift", upwind ? "wind" : "drift"),
          fmt::format("add {} (and --true-airspeed), or give --track",
                      upwind ? "--wind" : "--drift"));
  }
  return upwind ? ground.flown->wind_at(datum, ground.now).from
                : ground.flown->drift_at(datum, ground.now).value().towards;
}

/// An expanding square over an area commences at the area's middle and grows until it fills it.
int square_legs_for(const Region& region, Length spacing) {
  const Length side = Length::metres(std::sqrt(area(region).square_metres()));
  return std::min(1000, 2 * pattern::legs_for_width(side, spacing) - 1);
}

Pattern expanding_square(OptionTexts& options, const PatternGround& ground) {
  const std::string what = in_words(pattern::Kind::square);
  pattern::ExpandingSquare square;
  square.spacing = spacing(options, pattern::Kind::square);
  square.first_turn = first_turn(options);
  square.second = options.flag("--second");
  if (ground.area) {
    square.datum = middle(*ground.area);
    square.legs = options.optional("--legs", parse_leg_count)
                      .value_or(square_legs_for(*ground.area, square.spacing));
  } else {
    square.datum = options.position(one_of(options, {"--datum", "--start"}, "the datum"), what);
    square.legs = options.needed("--legs", what, parse_leg_count);
  }
  square.first_leg = options.optional("--first-leg", pattern::parse_first_leg)
                         .value_or(pattern::FirstLeg::as_given);
  square.first_track = square.first_leg == pattern::FirstLeg::as_given
                           ? first_track(options)
                           : first_track_in(square.first_leg, options, ground, square.datum);
  return pattern::make_expanding_square(square);
}

pattern::SectorPasses sector_passes(OptionTexts& options) {
  const int passes =
      options.optional("--passes", parse_count("the number of passes", 2)).value_or(1);
  const bool second = options.flag("--second");
  if (passes == 2 && second) {
    usage("--passes 2 flies the second pass too", "leave out --second or --passes");
  }
  return second        ? pattern::SectorPasses::second
         : passes == 2 ? pattern::SectorPasses::both
                       : pattern::SectorPasses::first;
}

Pattern sector_search(OptionTexts& options, const PatternGround&) {
  const std::string what = in_words(pattern::Kind::sector);
  pattern::SectorSearch search;
  search.datum = options.position("--datum", what);
  search.radius = options.needed("--radius", what, parse_length);
  search.first_track = first_track(options);
  search.first_turn = first_turn(options);
  search.sectors = options.optional("--sectors", pattern::parse_sector_count)
                       .value_or(pattern::SectorCount::six);
  search.start = options.optional("--commence", pattern::parse_sector_start)
                     .value_or(pattern::SectorStart::datum);
  search.passes = sector_passes(options);
  return pattern::make_sector_search(search);
}

Pattern track_line(OptionTexts& options, const PatternGround& ground) {
  pattern::TrackLine search;
  search.route = *ground.route;
  search.spacing = spacing(options, pattern::Kind::track_line);
  search.passes =
      options
          .optional("--passes", parse_count("the number of passes", pattern::kMostTrackLinePasses))
          .value_or(search.passes);
  search.first_turn = first_turn(options);
  return pattern::make_track_line(search);
}

Pattern coordinated_creeping_line(OptionTexts& options, const PatternGround& ground) {
  const std::string what = in_words(pattern::Kind::coordinated);
  pattern::CoordinatedCreepingLine search;
  search.spacing = spacing(options, pattern::Kind::coordinated);
  search.start = options.position("--start", what);
  search.first_track = first_track(options);
  search.first_turn = first_turn(options);
  search.aircraft = ground.flown
                        ? flight::ladder_speeds(search.first_track, search.first_turn, ground.speed,
                                                ground.flown->wind_at(search.start, ground.now))
                        : pattern::still_air(ground.speed);
  search.pace = one_of(options, {"--length", "--vessel-speed"}, "the pace") == "--length"
                    ? pattern::pace_of_leg_length(options.needed("--length", what, parse_length),
                                                  search.spacing, search.aircraft)
                    : pattern::pace_of_vessel(options.needed("--vessel-speed", what, parse_speed),
                                              search.spacing, search.aircraft);
  search.legs = ladder_legs(options, search.spacing);
  return pattern::make_coordinated_creeping_line(search);
}

Pattern multi_unit_parallel(OptionTexts& options, const PatternGround& ground) {
  const auto kind = pattern::Kind::multi_unit;
  pattern::TeamPlace place;
  place.units = options.needed("--units", in_words(kind),
                               parse_count("the number of units", pattern::kMostUnits));
  place.unit = options.needed("--unit", in_words(kind),
                              parse_count("the unit's place", pattern::kMostUnits));
  place.formation = options.optional("--formation", pattern::parse_formation)
                        .value_or(pattern::Formation::abreast);
  return ground.area
             ? pattern::make_multi_unit_parallel(*ground.area, ladder_in_area(options, kind), place)
             : pattern::make_multi_unit_parallel(ladder_from_start(options, kind), place);
}

Pattern waypoints(OptionTexts& options, const PatternGround& ground) {
  return pattern::make_waypoint_pattern(
      {*ground.route, options.optional("--spacing", parse_length)});
}

Pattern contour_search(OptionTexts& options, const PatternGround& ground) {
  const std::string what = in_words(pattern::Kind::contour);
  pattern::ContourSearch search;
  search.region = *ground.area;
  search.spacing = spacing(options, pattern::Kind::contour);
  search.clearance = options.needed("--clearance", what, parse_length);
  search.height_step = options.optional("--height-step", parse_length);
  search.order = options.optional("--order", pattern::parse_contour_order).value_or(search.order);
  search.first_turn = first_turn(options);
  return pattern::make_contour_search(search, *ground.terrain);
}

/// What a kind is laid out on, besides the options.
enum class Ground { options, area_or_options, area_and_terrain, route };

struct KindOptions {
  pattern::Kind kind;
  Ground ground;
  Pattern (*pattern)(OptionTexts&, const PatternGround&);
};

constexpr std::array<KindOptions, 9> kKinds{{
    {pattern::Kind::parallel, Ground::area_or_options, parallel_track},
    {pattern::Kind::creeping, Ground::area_or_options, creeping_line},
    {pattern::Kind::square, Ground::area_or_options, expanding_square},
    {pattern::Kind::sector, Ground::options, sector_search},
    {pattern::Kind::track_line, Ground::route, track_line},
    {pattern::Kind::contour, Ground::area_and_terrain, contour_search},
    {pattern::Kind::coordinated, Ground::options, coordinated_creeping_line},
    {pattern::Kind::multi_unit, Ground::area_or_options, multi_unit_parallel},
    {pattern::Kind::waypoints, Ground::route, waypoints},
}};

/// Which of the files a kind may and must be given.
void require_ground(const KindOptions& kind, const PatternGround& ground, const std::string& what) {
  const auto check = [&](std::string_view option, bool given, bool may, bool must) {
    if (given && !may) {
      usage(fmt::format("{} does not use {}", what, option), fmt::format("leave out {}", option));
    }
    if (!given && must) {
      usage(fmt::format("{} needs {}", what, option), fmt::format("add {}", option));
    }
  };
  const bool on_terrain = kind.ground == Ground::area_and_terrain;
  const bool on_route = kind.ground == Ground::route;
  check("--area", ground.area.has_value(), on_terrain || kind.ground == Ground::area_or_options,
        on_terrain);
  check("--terrain", ground.terrain.has_value(), on_terrain, on_terrain);
  check("--route", ground.route.has_value(), on_route, on_route);
}

}  // namespace

Pattern pattern_of_kind(pattern::Kind kind, OptionTexts& options, const PatternGround& ground) {
  const auto* const found = std::find_if(
      kKinds.begin(), kKinds.end(), [&](const KindOptions& entry) { return entry.kind == kind; });
  if (found == kKinds.end()) throw std::logic_error("a pattern is missing from the command");
  std::string what = in_words(kind);
  require_ground(*found, ground, what);
  if (found->ground == Ground::area_or_options) {
    what += ground.area ? " over an area" : " without an area";
  }
  Pattern pattern = found->pattern(options, ground);
  options.refuse_unread(what);
  return pattern;
}

}  // namespace sweepwright::cli
