// Sortie: what one crew flew, stretch by stretch: which of it was search, and how wide it swept.
//
// Problem: a track shows where a crew was, not what it saw. Turns, the way out and back, time above
//   cloud and times off task look like search on a map.
// Method: each stretch between two fixes gets one use, the first that holds:
//   1. off task: before or after the crew's reported times on task;
//   2. above cloud: in a span that the crew reported;
//   3. left out: its middle lies in ground that the planner leaves out (water, say);
//   4. outside: its middle lies outside the assigned sector;
//   5. turn: the direction of travel changes by more than kTurnRate, over chords of at least
//      kChordTime and kChordLength before and behind the stretch's middle (teams on foot never);
//   6. no width: the sweep width tables have none for its height or speed;
//   7. search, all else.
//   The sweep width of a stretch is that of the tables at its height above ground (altitude of the
//   log less the ground's, over water the altitude itself; else the height that the crew reports,
//   else the planned one), its ground speed along the chord (else the reported, else the planned),
//   and the visibility that the crew reports (else the planned one). A width that the planner
//   stated stands as stated. Altitudes below the ground are not used. Below the tables' lowest
//   height the lowest counts, and is said.
// Conventions: only stretches of use `search` have a sweep width above 0, but for uses that
//   SortieOptions counts in.
// Domain: fixes without times have no speed and no off task; both are said in `remarks`.
// Accuracy: heights are rounded to 10 m and speeds to 1 m/s before the tables are asked: under
//   1 % of the width (sortie_test.cpp).
// Promises: P1 the times and distances of all uses add up to those of the track
//   (sortie_test.cpp); P2 no stretch lies in a gap between segments.
// Source: own work; half the standard rate of 3 degrees a second for kTurnRate: own choice.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sweepwright/debrief/crew_report.hpp"
#include "sweepwright/debrief/swept_piece.hpp"
#include "sweepwright/plan/plan.hpp"
#include "sweepwright/terrain/elevation_model.hpp"
#include "sweepwright/track/track.hpp"

namespace sweepwright::debrief {

enum class Use { search, turn, outside, left_out, above_cloud, off_task, no_width };
/// `search`, `turn`, `outside the sector`, ...
std::string_view name(Use use);
inline constexpr int kUses = 7;

inline constexpr double kTurnRate = 1.5;  ///< degrees a second
inline constexpr Duration kChordTime{10};
inline constexpr Length kChordLength = Length::metres(100);

/// What a crew brought home.
struct SortieInput {
  std::size_t assignment = 0;  ///< its place in the plan
  track::Track track;
  std::optional<CrewReport> report;
};

struct SortieOptions {
  bool count_turns = false;
  bool count_outside = false;
  Region left_out;  ///< ground over which the track does not count; may be empty
};

/// A stretch between two fixes.
struct FlownPiece {
  SweptPiece swept;
  Use use = Use::search;
  std::optional<Instant> from;
  std::optional<Instant> to;
  std::optional<Length> height;  ///< above the ground or water
  std::optional<Speed> speed;    ///< over the ground
};

/// What all stretches of one use took.
struct UseTotal {
  Duration time{};
  Length distance;
};

struct Sortie {
  SortieInput input;
  std::vector<FlownPiece> pieces;
  std::vector<UseTotal> totals;      ///< one for each Use, in their order
  Area effort;                       ///< sum of length times sweep width
  Length mean_width;                 ///< over the distance that counts; 0 when none does
  std::optional<Instant> on_scene;   ///< begin of the first stretch that counts
  std::optional<Instant> off_scene;  ///< end of the last
  std::vector<std::string> remarks;
};

/// `ground`: heights of the ground; an empty model when none are known. Throws Error(value) for an
/// assignment that the plan does not have.
Sortie make_sortie(const plan::Plan& plan, SortieInput input, const terrain::ElevationModel& ground,
                   const SortieOptions& options = {});

}  // namespace sweepwright::debrief
