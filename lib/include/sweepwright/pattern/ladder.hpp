// Ladder: back-and-forth legs side by side, the geometry shared by parallel track and creeping
// line.
//
// Conventions: the legs cross a base line at right angles, one spacing apart along it. The base
// line
//   is the geodesic through the middle of the legs, so neighbours stay one spacing apart on it and
//   come closer by cos(L/2R) at their ends: 0.002 % for legs of 40 NM.
// Accuracy: spacing within 0.1 % for legs up to 300 NM (ladder_test.cpp).
#pragma once

#include <optional>

#include "sweepwright/pattern/pattern.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::pattern {

/// Where a crew turns: agencies differ (docs/methods/parallel-track.md).
enum class TurnRoom {
  inside,   ///< legs end half a spacing inside the sector, so that turns stay in it
  outside,  ///< legs run to the sector's edge, turns are made beyond it
};
std::string_view name(TurnRoom room);
TurnRoom parse_turn_room(std::string_view name);

/// What is done with a width that is no whole number of spacings.
enum class Gaps {
  /// The spacing asked for; the last gap may be narrower.
  as_asked,
  /// All gaps the same: the nearest spacing that fits, wider by a quarter of a gap shared out over
  /// all
  /// legs at the most. Pattern::spacing is the one drawn.
  even,
};

/// A ladder that starts at a given place.
struct LadderFromStart {
  Position start;             ///< commence search point
  TrueDirection first_track;  ///< direction of the first leg at the start
  Length leg_length;          ///< above 0
  Length spacing;             ///< above 0
  int legs = 0;               ///< number of search legs, 1 to kMostLegs
  Turn first_turn = Turn::right;
};

/// A ladder that covers a region.
struct LadderInRegion {
  Region region;
  TrueDirection first_track;  ///< direction of the first leg, at the region's middle
  Length spacing;             ///< above 0
  Turn first_turn = Turn::right;
  TurnRoom turn_room = TurnRoom::inside;
  Gaps gaps = Gaps::as_asked;
};

/// How to cover a region with the legs of a pattern that knows its own side to lie along.
struct RegionPatternOptions {
  Length spacing;
  /// Absent: along the side that the pattern prefers.
  std::optional<TrueDirection> first_track = std::nullopt;
  Turn first_turn = Turn::right;
  TurnRoom turn_room = TurnRoom::inside;
  Gaps gaps = Gaps::as_asked;
  /// The corner to commence at, as its direction from the region's middle. It chooses the first
  /// turn, and which way along its line the first track runs; absent: those two choose the corner.
  std::optional<TrueDirection> commence = std::nullopt;
};

/// How a ladder enters a region.
struct Entry {
  TrueDirection first_track;
  Turn first_turn;
};

/// The entry at the corner that lies nearest to the direction `corner` from the middle of the
/// rectangle round the region, for legs either way along `along`. Throws Error(value) when two
/// corners are as near.
Entry entry_at_corner(const Region& region, TrueDirection along, TrueDirection corner);

/// `nw`, `ne`, `sw`, `se`, or `n`, `e`, `s`, `w`, as a direction. Throws Error(value).
TrueDirection parse_corner(std::string_view name);

/// Number of legs one spacing apart that leave no point of a `width` farther than half a spacing
/// from one. A strip of up to kForgivenStrip of a spacing at the far edge is not worth a leg.
int legs_for_width(Length width, Length spacing);
inline constexpr double kForgivenStrip = 0.02;

/// Throws Error(value) when a number is out of range, Error(impossible) when no leg fits.
Pattern make_ladder(Kind kind, const LadderFromStart& request);

/// The first leg lies half a spacing inside the edge on the side away from the first turn. The last
/// leg lies half a spacing inside the far edge, which can make the last gap narrower than the rest
/// (a remark says so) unless even gaps are asked for. Where the region is concave a leg is flown in
/// parts with transit legs between.
Pattern make_ladder(Kind kind, const LadderInRegion& request);

}  // namespace sweepwright::pattern
