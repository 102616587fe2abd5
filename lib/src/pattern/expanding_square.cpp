#include "sweepwright/pattern/expanding_square.hpp"

#include <fmt/format.h>

#include <array>

#include "pattern/require.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/position/local_plane.hpp"

namespace sweepwright::pattern {
namespace {

constexpr int kMostSquareLegs = 1000;

std::string first_leg_remark(const ExpandingSquare& request, TrueDirection track) {
  const bool upwind = request.first_leg == FirstLeg::upwind;
  return fmt::format("the first leg lies {}, {}: manuals differ, others lay it {}{}",
                     upwind ? "into the wind" : "down the drift", format_direction(track),
                     upwind ? "down the drift" : "into the wind",
                     request.second ? "; the second pattern is turned from it" : "");
}

}  // namespace

FirstLeg parse_first_leg(std::string_view name) {
  constexpr std::array<std::string_view, 2> kNames{"upwind", "downdrift"};
  const std::string lower = to_lower_ascii(name);
  if (lower == kNames[0]) return FirstLeg::upwind;
  if (lower == kNames[1]) return FirstLeg::downdrift;
  throw Error(ErrorCode::value, fmt::format("'{}' is no choice of a first leg", printable(name)),
              spelling_hint(name, kNames));
}

Length expanding_square_distance(int legs, Length spacing) {
  const int m = legs / 2;
  return spacing * (legs % 2 == 0 ? m * (m + 1.0) : (m + 1.0) * (m + 1.0));
}

Pattern make_expanding_square(const ExpandingSquare& request) {
  require_above_zero(request.spacing, "track spacing");
  if (request.legs < 1 || request.legs > kMostSquareLegs ||
      request.spacing * (request.legs / 2.0) > kLocalPlaneReach) {
    throw Error(ErrorCode::value,
                fmt::format("an expanding square of {} legs at {} cannot be drawn", request.legs,
                            format_length(request.spacing, LengthUnit::nautical_mile, 2)),
                fmt::format("give 1 to {} legs, and a side of at most {:.0f} NM", kMostSquareLegs,
                            kLocalPlaneReach.nautical_miles()));
  }
  Pattern pattern{Kind::square, request.spacing, request.first_turn, {}, {}};
  Position at = request.datum;
  TrueDirection track =
      request.first_track + (request.second ? quarter_turn(request.first_turn) / 2 : Angle());
  for (int i = 0; i < request.legs; ++i) {
    const int spacings = i / 2 + 1;  // 1, 1, 2, 2, 3, 3, ...
    const Arrival end = travel(at, track, request.spacing * spacings);
    pattern.legs.push_back(make_leg(LegKind::search, at, end.position));
    at = end.position;
    track = end.track + quarter_turn(request.first_turn);
  }
  if (request.first_leg != FirstLeg::as_given) {
    pattern.remarks.push_back(first_leg_remark(request, request.first_track));
  }
  return pattern;
}

}  // namespace sweepwright::pattern
