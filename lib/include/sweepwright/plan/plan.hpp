// Plan: the answer to a mission: who searches what ground, how, and what it is worth.
//
// Problem: this is the one place where the rooms meet. From each unit's sweep width, speed and time
//   comes what it can cover; from that its share of the area; in its sector a pattern that fits its
//   time; and from coverage the probability of detection.
// Method, in the order that a planner works:
//   1. sweep width W of each unit, from the tables or the planner's own (sweep/sweep_width.hpp);
//   2. on-scene endurance, cut at sunset unless the unit searches at night: stated, or what the
//   ways out and back and the reserve leave of the
//      endurance; effort Z = W V T with T = 85 % of it (sweep/search_effort.hpp). The ways are
//      reckoned to the middle of the area first, then to the ends of the pattern as drawn;
//   3. belief: the mission's scenarios become probabilities of its grid's cells. A mission without
//      an area is searched where the hours are worth most: each unit in a rectangle of its own
//      (effort/assign.hpp). Else:
//      coverage C: the wanted one, or what the hours allow, whichever is less; spacing S = W / C;
//   4. sectors in proportion to V T S (sector/divide.hpp), named by day letter and number;
//   5. a pattern in each sector, its legs spread evenly: the spacing drawn is the nearest that
//   fits.
//      When a pattern takes longer than the search time, all spacings are
//      widened together and the patterns drawn again, until all fit.
//   6. coverage W / S and probability of detection of each sector as drawn; with a belief, of
//      containment and of success (POS = POC x POD), beside what the same effort could find at
//      most;
//   7. each flight against the ground (hazard/terrain_check.hpp): findings, worst first. A plan
//   with
//      findings that forbid a flight is a plan still: it says so.
// Conventions: aircraft fly in the forecast's wind, at their height when it has levels; vessels and
//   teams move as in calm air. Times are those of the pattern as flown (flight/flown_pattern.hpp).
//   An expanding square commences at the datum when the sector holds it, else at the sector's
//   middle.
// Promises: P1 the sectors tile the area (rectangles of a belief do not overlap); P2 no pattern
// takes longer than its unit's search time; P3
//   every figure follows from the mission and the others shown (plan_test.cpp).
// Source: the rooms named; the order of work [IAMSAR Manual Vol II, ch. 4 and 5, from memory].
#pragma once

#include <string>
#include <vector>

#include "sweepwright/belief/belief.hpp"
#include "sweepwright/flight/endurance.hpp"
#include "sweepwright/flight/flown_pattern.hpp"
#include "sweepwright/flight/search_light.hpp"
#include "sweepwright/grid/cell.hpp"
#include "sweepwright/hazard/finding.hpp"
#include "sweepwright/hazard/terrain_check.hpp"
#include "sweepwright/pattern/pattern.hpp"
#include "sweepwright/plan/mission.hpp"
#include "sweepwright/sweep/detection.hpp"
#include "sweepwright/sweep/sweep_width.hpp"

namespace sweepwright::plan {

/// A way between a unit's base and its sector.
struct Transit {
  GeodesicLine line;
  Duration time{};
  std::optional<flight::WindTriangle> triangle;  ///< at its start; none where there is no way to go
};

/// What one unit is to do.
struct Assignment {
  SearchUnit unit;
  std::string sector_name;  ///< "A1": day letter and number
  Region sector;
  std::vector<grid::Cell> cells;  ///< of the mission's grid, that share ground with the sector
  sweep::SweepWidth sweep_width;
  Length spacing;
  sweep::Coverage coverage;
  /// Share of the sector that the pattern searches: 1, but for an expanding square that ends before
  /// the sector's corners.
  double searched_share = 1;
  /// Over the whole sector: that of the coverage times the share searched; for a sector search the
  /// mean over its disc times that share (sweep/sector_search.hpp).
  sweep::Probability probability_of_detection;
  /// That the object is in the sector, by the mission's belief; none without one.
  std::optional<sweep::Probability> probability_of_containment;
  pattern::Pattern pattern;
  std::string pattern_reason;     ///< why this pattern and direction, in one line
  Transit way_out;                ///< base to commence search point
  Transit way_back;               ///< end of the pattern to base
  flight::SearchLight light;      ///< of the pattern as flown
  Duration on_scene_endurance{};  ///< what the unit has in the sector
  Duration search_time{};         ///< of it, for searching
  Duration pattern_time{};        ///< what the pattern takes as flown, turns included
  flight::FlownPattern flown;     ///< from base to base
  /// What the flight uses of the unit's endurance, when that is known.
  std::optional<flight::EnduranceUse> endurance_use;
  std::vector<std::string> remarks;  ///< what the crew and the planner must know of this sector
  /// The flight against the ground; none for what does not fly, and without an elevation model.
  std::optional<hazard::TerrainCheck> terrain;
  std::vector<hazard::Finding> findings;  ///< of this crew, worst first
};

/// Where the object can be by the mission's scenarios, and what the plan makes of it.
struct PlanBelief {
  belief::Belief belief;                          ///< over the cells of the mission's grid
  sweep::Probability probability_of_containment;  ///< in all sectors together
  sweep::Probability probability_of_success;      ///< sum of containment x detection
  /// What the same effort could find at most, spread over the cells without regard to what can be
  /// flown, by the exponential law.
  sweep::Probability bound;
};

struct Plan {
  Mission mission;
  Region area;  ///< that is searched: the mission's, or all sectors where it names none
  std::vector<Assignment> assignments;  ///< in the order of the mission's units
  std::vector<grid::Cell> cells;        ///< of the mission's grid, that share ground with the area
  Area searched;                        ///< the whole area
  Area effort;                          ///< sum of W V T
  std::optional<PlanBelief> belief;     ///< when the mission has scenarios
  sweep::Coverage coverage_wanted;
  sweep::Coverage coverage_planned;             ///< over the whole area, weighted by ground
  sweep::Probability probability_of_detection;  ///< the same
  std::vector<std::string> remarks;             ///< what the planner must know
  std::vector<hazard::Finding> findings;        ///< of all crews and of the mission, worst first
};

/// The findings that one crew must know: its own, and those about all.
std::vector<hazard::Finding> findings_for(const Plan& plan, const Assignment& assignment);

/// The unit as the flight room knows it.
flight::Aircraft aircraft(const SearchUnit& unit);

/// Throws Error: value or geometry for what contradicts itself, impossible for what cannot be
/// planned (endurance under one leg, an object that the tables do not know), naming the unit.
Plan make_plan(const Mission& mission);

}  // namespace sweepwright::plan
