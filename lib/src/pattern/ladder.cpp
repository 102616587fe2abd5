#include "sweepwright/pattern/ladder.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "pattern/ladder_rows.hpp"
#include "pattern/require.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/position/plane_region.hpp"

namespace sweepwright::pattern {
namespace {

/// Corners whose directions differ by less are equally near.
constexpr Angle kLeastDifference = Angle::degrees(1);

constexpr std::array<std::string_view, 8> kCompassPoints{"n", "ne", "e", "se",
                                                         "s", "sw", "w", "nw"};

Pattern joined(Kind kind, LadderRows ladder, Turn first_turn) {
  Pattern pattern{kind, ladder.spacing, first_turn, joined_rows(ladder.rows),
                  std::move(ladder.remarks)};
  if (pattern.legs.empty()) throw no_leg_fits(ladder.spacing);
  return pattern;
}

}  // namespace

std::string_view name(TurnRoom room) {
  return room == TurnRoom::inside ? "inside" : "outside";
}

TurnRoom parse_turn_room(std::string_view name) {
  const std::string lower = to_lower_ascii(name);
  if (lower == "inside") return TurnRoom::inside;
  if (lower == "outside") return TurnRoom::outside;
  throw Error(
      ErrorCode::value, fmt::format("turns cannot be made '{}'", printable(name)),
      "write inside (legs end half a spacing inside the sector) or outside (legs run to its edge)");
}

int legs_for_width(Length width, Length spacing) {
  const double spacings = width / spacing;
  const double legs = std::max(1.0, std::ceil(spacings - kForgivenStrip));
  if (!(legs <= kMostLegs)) {
    throw Error(ErrorCode::value,
                fmt::format("a width of {} at a track spacing of {} needs over {} legs",
                            format_length(width, LengthUnit::nautical_mile, 1),
                            format_length(spacing, LengthUnit::nautical_mile, 4), kMostLegs),
                "give a wider track spacing or a smaller area");
  }
  return static_cast<int>(legs);
}

TrueDirection parse_corner(std::string_view name) {
  const std::string lower = to_lower_ascii(name);
  const auto* const found = std::find(kCompassPoints.begin(), kCompassPoints.end(), lower);
  if (found != kCompassPoints.end()) {
    return TrueDirection::degrees(45.0 * static_cast<double>(found - kCompassPoints.begin()));
  }
  throw Error(ErrorCode::value, fmt::format("'{}' is no corner of an area", printable(name)),
              "write nw, ne, sw or se; n, e, s or w for an area that stands on a corner");
}

Entry entry_at_corner(const Region& region, TrueDirection along, TrueDirection corner) {
  const LocalPlane plane = local_plane(region, along);
  const PlaneRegion ground = to_plane(region, plane);
  const Length half_up = extent_up(ground).extent() / 2;
  const Length half_right = extent_right(ground).extent() / 2;
  const double from_axis = std::atan2(half_right.metres(), half_up.metres()) * kDegreesPerRadian;
  struct Choice {
    TrueDirection corner;
    Entry entry;
  };
  // A crew that starts at the low right corner and flies up has the area on its left.
  std::array<Choice, 4> choices{{
      {along + Angle::degrees(from_axis), {along.reversed(), Turn::right}},
      {along - Angle::degrees(from_axis), {along.reversed(), Turn::left}},
      {along + Angle::degrees(180 - from_axis), {along, Turn::left}},
      {along - Angle::degrees(180 - from_axis), {along, Turn::right}},
  }};
  const auto away = [&](const Choice& choice) {
    return std::abs(turn_between(corner, choice.corner).degrees());
  };
  std::sort(choices.begin(), choices.end(),
            [&](const Choice& a, const Choice& b) { return away(a) < away(b); });
  if (away(choices[1]) - away(choices[0]) < kLeastDifference.degrees()) {
    const auto [first, second] = std::minmax(choices[0].corner, choices[1].corner);
    throw Error(
        ErrorCode::value,
        fmt::format("two corners of the area are as near to its {} side, on {} and {}",
                    format_direction(corner), format_direction(first), format_direction(second)),
        "name the corner between two compass points, such as nw");
  }
  return choices[0].entry;
}

Pattern make_ladder(Kind kind, const LadderFromStart& request) {
  return joined(kind, ladder_rows(request), request.first_turn);
}

Pattern make_ladder(Kind kind, const LadderInRegion& request) {
  return joined(kind, ladder_rows(request), request.first_turn);
}

}  // namespace sweepwright::pattern
