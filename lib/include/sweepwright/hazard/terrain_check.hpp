// TerrainCheck: every leg of a flight against the ground: planned height, least clearance, minimum
// safe altitude.
//
// Problem: a search is planned as a height above the ground and flown as a height above the sea.
//   Over hills the two part, and one ridge under one turn is enough. Each leg is checked as it is
//   flown, the turn at its end and the ways out and back included.
// Conventions: heights above mean sea level, as the model's; a corridor for each leg of the flown
//   pattern, in its order. Where the crew states an altitude, it stands for the whole flight and is
//   only checked. Else search legs are planned at the lowest heights that keep the search height,
//   and never less than the minimum, above the highest ground of their corridor: one height for the
//   pattern, one for each leg, or steps along the leg. A leg from one search leg to the next is not
//   planned below both. Ways out and back are planned at their minimum safe altitude. Where the
//   climb performance is known, heights are raised where a greater one that follows could not be
//   reached otherwise, back to the way out. Heights are whole hundreds of feet, rounded up.
// Domain: as terrain/corridor.hpp. The climb from the base has a check of its own
//   (climb.hpp).
// Accuracy: that of terrain/corridor.hpp and flight/flown_path.hpp.
// Promises: P1 a spike of the model anywhere in the corridor of the flown path is found; P2 planned
//   heights keep the minimum wherever they are given, and none is given over ground that is not
//   known; P3 climbs between planned heights can be made, but for the one from the base; P4 the
//   minimum safe altitude of the pattern is that of its highest leg, and there is none when a leg
//   has none (terrain_check_test.cpp).
// Source: the headers named.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/hazard/climb_performance.hpp"
#include "sweepwright/terrain/clearance.hpp"

namespace sweepwright::hazard {

/// How search legs get their heights above sea level.
enum class HeightsBy {
  pattern,  ///< one height for all legs of the pattern
  leg,      ///< one for each leg
  steps,    ///< following the ground in steps
};

/// Steps are no shorter than this where nobody says otherwise: a minute and more of level flight.
/// Own choice.
inline constexpr Length kShortestStep = Length::nautical_miles(2);

struct TerrainTask {
  Length minimum = terrain::kMinimumClearance;
  Length half_width = terrain::kCorridorHalfWidth;
  std::optional<Length> altitude;       ///< stated by the crew, for the whole flight
  std::optional<Length> search_height;  ///< above the ground
  HeightsBy heights = HeightsBy::leg;
  Length shortest_step = kShortestStep;
  std::optional<Position> base;  ///< where the flight begins on the ground
  flight::Aircraft aircraft;
  std::optional<ClimbPerformance> climb;
};

struct LegTerrain {
  terrain::Corridor corridor;    ///< of the leg as flown, its turn included
  terrain::HeightPlan heights;   ///< planned
  terrain::Clearance clearance;  ///< at the heights planned
  std::optional<Length> safe;    ///< minimum safe altitude; none where ground is not known
};

struct TerrainCheck {
  TerrainTask task;
  std::vector<LegTerrain> legs;  ///< one for each of FlownPattern::legs
  /// Minimum safe altitude of the pattern, ways out and back not counted. Its corridors reach half
  /// a spacing or more to each side, so it is that of the ground that the pattern searches.
  std::optional<Length> safe;
};

/// Throws as terrain::make_corridor(). A leg without length is checked as a place.
TerrainCheck check_terrain(const terrain::ElevationModel& model, const flight::FlownPattern& flown,
                           const TerrainTask& task);

/// The highest height planned on a leg; none when a part of it has none.
std::optional<Length> highest_planned(const LegTerrain& leg);

}  // namespace sweepwright::hazard
