#include "plan/choose_pattern.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

#include "plan/fly.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/flight/glare.hpp"
#include "sweepwright/pattern/contour_search.hpp"
#include "sweepwright/pattern/creeping_line.hpp"
#include "sweepwright/pattern/expanding_square.hpp"
#include "sweepwright/pattern/parallel_track.hpp"
#include "sweepwright/pattern/sector_search.hpp"
#include "sweepwright/position/plane_region.hpp"
#include "sweepwright/sector/divide.hpp"

namespace sweepwright::plan {
namespace {

/// A sector that takes fewer legs than this may be the ground of an expanding square; own choice.
constexpr double kMostLegsOfASquare = 6;
/// Legs across the sector, with more turns, must take less than this of the time; own choice.
constexpr double kClearGain = 0.97;
/// How much longer than wide such a sector may be; own choice.
constexpr double kSquarish = 1.4;

pattern::Pattern ladder(pattern::Kind kind, const Region& sector,
                        const pattern::RegionPatternOptions& options) {
  return kind == pattern::Kind::creeping ? pattern::make_creeping_line(sector, options)
                                         : pattern::make_parallel_track(sector, options);
}

/// A way of flying a sector, and what it costs.
struct Candidate {
  pattern::Pattern pattern;
  /// Time away, and once more the time that the crew looks into a low sun; at the spacing asked
  /// for.
  Duration cost{};
  Duration into_sun{};  ///< on search legs
};

/// Flies it: turns, wind and ways out and back decide, and the sun.
Candidate flown(const Mission& mission, const Assignment& assignment, pattern::Pattern pattern) {
  const SearchUnit& unit = assignment.unit;
  flight::FlyOptions options = fly_options(mission, unit);
  options.magnetic_headings = false;
  const flight::FlownPattern path =
      flight::fly(pattern, aircraft(unit), wind_field(mission.conditions, unit), options);
  const Duration into_sun = flight::time_into_sun(path);
  // Even gaps make one way sparser than another: what costs less must not find less.
  const double sparser = pattern.spacing / assignment.spacing;
  return {std::move(pattern), (path.total_time + into_sun) * sparser, into_sun};
}

/// Of the four corners that a sector's ladder can commence at, the one that costs least.
Candidate best_ladder(const Mission& mission, const Assignment& assignment, pattern::Kind kind,
                      TrueDirection along) {
  std::optional<Candidate> best;
  for (const TrueDirection track : std::array{along, along.reversed()}) {
    for (const pattern::Turn turn : {pattern::Turn::right, pattern::Turn::left}) {
      Candidate candidate = flown(mission, assignment,
                                  ladder(kind, assignment.sector,
                                         {.spacing = assignment.spacing,
                                          .first_track = track,
                                          .first_turn = turn,
                                          .gaps = pattern::Gaps::even}));
      // A clear gain only: equal corners must not depend on the last digit.
      if (!best || candidate.cost < best->cost - std::chrono::seconds(1)) {
        best = std::move(candidate);
      }
    }
  }
  return std::move(*best);
}

/// How far a pattern round a place may reach on all sides of it within the sector.
Length room_round(const Region& sector, Position place) {
  const PlaneRegion ground = to_plane(sector, LocalPlane(place, sector::long_side(sector)));
  const Span right = extent_right(ground);
  const Span up = extent_up(ground);
  return std::min({-right.low, right.high, -up.low, up.high});
}

/// The planner's wish for the legs: the unit's own, else the mission's.
std::optional<TrueDirection> wanted_track(const Mission& mission, const Assignment& assignment) {
  const auto& own = assignment.unit.pattern_details.first_track;
  return own ? own : mission.leg_direction;
}

TrueDirection first_track(const Mission& mission, const Assignment& assignment) {
  return wanted_track(mission, assignment)
      .value_or(mission.conditions.wind_from.value_or(TrueDirection()));
}

std::string_view first_track_reason(const Mission& mission, const Assignment& assignment) {
  if (wanted_track(mission, assignment)) return "in the direction that the planner asked for";
  return mission.conditions.wind_from ? "into the wind" : "north, for want of a wind";
}

/// As many legs of an expanding square as stay in reach: inside the sector's narrower half-width,
/// and within the search time.
int square_legs(const Assignment& assignment, Position datum) {
  const Length room = room_round(assignment.sector, datum);
  const Length reach = assignment.unit.search_speed * assignment.search_time;
  int legs = 1;
  // After n legs the square reaches (n + 1) / 4 spacings from the datum, and is searched half a
  // spacing further.
  while (legs < 1000 && assignment.spacing * ((legs + 2) / 4.0 + 0.5) <= room &&
         pattern::expanding_square_distance(legs + 1, assignment.spacing) <= reach) {
    ++legs;
  }
  return legs;
}

ChosenPattern expanding_square(const Mission& mission, const Assignment& assignment,
                               std::string_view why) {
  const bool has_datum = mission.datum && contains(assignment.sector, mission.datum->position);
  const Position datum = has_datum ? mission.datum->position : middle(assignment.sector);
  const int legs = square_legs(assignment, datum);
  return {pattern::make_expanding_square({datum, first_track(mission, assignment),
                                          assignment.spacing, legs, pattern::Turn::right}),
          fmt::format("expanding square, {}, from {}; first leg {}", why,
                      has_datum ? "the datum" : "the middle of the sector",
                      first_track_reason(mission, assignment))};
}

/// A sector search round the datum, as wide as the sector and the search time allow.
ChosenPattern sector_search(const Mission& mission, const Assignment& assignment) {
  if (!mission.datum || !contains(assignment.sector, mission.datum->position)) {
    throw Error(ErrorCode::value,
                fmt::format("a sector search needs a datum in sector {}", assignment.sector_name),
                "give the mission's datum, or ask for another pattern");
  }
  const Position datum = mission.datum->position;
  const Length reach = assignment.unit.search_speed * assignment.search_time / 9.0;
  const Length radius = std::min(room_round(assignment.sector, datum), reach);
  const TrueDirection first = first_track(mission, assignment);
  return {pattern::make_sector_search({.datum = datum, .first_track = first, .radius = radius}),
          fmt::format("sector search, chosen by the planner, round the datum; first leg {}",
                      first_track_reason(mission, assignment))};
}

/// Level lines in the sector. Heights to fly come from the check against the ground, which looks
/// also beside the lines.
ChosenPattern contour_search(const Mission& mission, const Assignment& assignment) {
  const SearchUnit& unit = assignment.unit;
  if (!mission.elevation) {
    throw Error(ErrorCode::value, "a contour search needs the heights of the ground",
                "add \"elevation\" to the mission file, or ask for another pattern");
  }
  if (!unit.search_height) {
    throw Error(ErrorCode::value, "a contour search is for aircraft", "ask for another pattern");
  }
  return {pattern::make_contour_search({.region = assignment.sector,
                                        .spacing = assignment.spacing,
                                        .height_step = unit.pattern_details.height_step,
                                        .order = unit.pattern_details.order},
                                       mission.elevation->model),
          "contour search, chosen by the planner; heights to fly are those of the leg table"};
}

/// Small, about as long as wide, and the datum in it: the ground of an expanding square.
bool suits_a_square(const Mission& mission, const Assignment& assignment) {
  if (!mission.datum || mission.leg_direction) return false;
  if (!contains(assignment.sector, mission.datum->position)) return false;
  const PlaneRegion ground = to_plane(
      assignment.sector, local_plane(assignment.sector, sector::long_side(assignment.sector)));
  const Length across = extent_right(ground).extent();
  const Length along = extent_up(ground).extent();
  const Length room = room_round(assignment.sector, mission.datum->position);
  return across / assignment.spacing < kMostLegsOfASquare && along / across < kSquarish &&
         room / (across / 2) > 1 / kSquarish;
}

std::string_view side_reason(bool asked, bool long_side) {
  if (asked) return "in the direction that the planner asked for";
  return long_side ? "along the long side of the sector" : "along the short side of the sector";
}

ChosenPattern ladder_of(bool asked, bool creeping, std::string_view why, Candidate best) {
  std::string reason = fmt::format("{}, {}: legs {}", creeping ? "creeping line" : "parallel track",
                                   why, side_reason(asked, !creeping));
  if (best.into_sun > std::chrono::minutes(1)) {
    reason += fmt::format("; {} of search legs look into a low sun",
                          format_duration_minutes(best.into_sun));
  }
  return {std::move(best.pattern), std::move(reason)};
}

}  // namespace

ChosenPattern choose_pattern(const Mission& mission, const Assignment& assignment) {
  const PatternChoice choice = assignment.unit.pattern;
  if (choice == PatternChoice::sector) return sector_search(mission, assignment);
  if (choice == PatternChoice::square) {
    return expanding_square(mission, assignment, "chosen by the planner");
  }
  if (choice == PatternChoice::automatic && suits_a_square(mission, assignment)) {
    return expanding_square(mission, assignment, "a small sector round the datum");
  }
  if (choice == PatternChoice::contour) return contour_search(mission, assignment);
  const std::optional<TrueDirection> wanted = wanted_track(mission, assignment);
  const TrueDirection long_side = sector::long_side(assignment.sector);
  const TrueDirection short_side = long_side + Angle::degrees(90);
  const auto best = [&](bool creeping) {
    const TrueDirection along = wanted.value_or(creeping ? short_side : long_side);
    return best_ladder(mission, assignment,
                       creeping ? pattern::Kind::creeping : pattern::Kind::parallel, along);
  };
  if (choice != PatternChoice::automatic || wanted) {
    const bool creeping = choice == PatternChoice::creeping;
    return ladder_of(wanted.has_value(), creeping,
                     choice == PatternChoice::automatic ? "quickest corner to commence at"
                                                        : "chosen by the planner",
                     best(creeping));
  }
  Candidate parallel = best(false);
  Candidate creeping = best(true);
  if (creeping.cost > kClearGain * parallel.cost) {
    return ladder_of(wanted.has_value(), false, "fewest turns", std::move(parallel));
  }
  const Duration saved = parallel.cost - creeping.cost;
  return ladder_of(wanted.has_value(), true,
                   fmt::format("{} quicker in this wind and sun than legs the other way",
                               format_duration_minutes(saved)),
                   std::move(creeping));
}

}  // namespace sweepwright::plan
