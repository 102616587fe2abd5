#include "sweepwright/pattern/expanding_square.hpp"

#include <fmt/format.h>

#include "pattern/require.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/position/local_plane.hpp"

namespace sweepwright::pattern {
namespace {

constexpr int kMostSquareLegs = 1000;

}  // namespace

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
  return pattern;
}

}  // namespace sweepwright::pattern
