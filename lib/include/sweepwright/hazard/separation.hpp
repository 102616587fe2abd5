// Separation: how close two crews can come, each a little early or late, off its line, or high or
// low.
//
// Problem: two plans that keep apart on paper meet in the air when one crew is late.
// Method: the tracks are straight lines in space and time, piece by piece. For each pair of pieces
//   the nearest approach is the least distance between a place of one at time s and a place of the
//   other at time u with |s - u| no more than both may be early or late: a quadratic over a convex
//   polygon, whose least value lies inside it or on an edge, in closed form.
// Conventions: a pair is in conflict where its distance, less both crews' lateral uncertainty, is
//   under the lateral minimum, and its heights, less both uncertainties, are under the vertical
//   minimum. On a piece that climbs, all its heights count. A height that is not known is no
//   separation.
// Domain: any place; tracks of two points or more. A crew counts from its departure to its
//   return: aircraft on the ground are apart. Near a base that both use nothing is checked.
// Accuracy: distances within 5 m up to 50 km (chords of pieces of at most 2 km stand for
//   geodesics). Against a dense search in time: separation_test.cpp.
// Promises: P1 the order of the two crews does not matter; P2 more uncertainty never gives less
//   conflict; P3 with none, the approach is that of the tracks as planned.
// Source: the default minima are common practice, no source; local rules override them.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/hazard/crew_track.hpp"
#include "sweepwright/hazard/finding.hpp"

namespace sweepwright::hazard {

/// How far a crew may be from its plan.
struct TrackUncertainty {
  Duration time = std::chrono::minutes(5);       ///< early or late
  Length lateral = Length::nautical_miles(0.2);  ///< off its line
  Length height = Length::feet(100);
};

/// What must be left between two crews after all uncertainty: one of the two is enough.
struct SeparationMinima {
  Length lateral = Length::nautical_miles(1);
  Length vertical = Length::feet(300);  ///< so that planned heights are 500 ft apart
  TrackUncertainty uncertainty;
  /// Round a base that both use the aerodrome's own rules keep them apart.
  Length round_shared_base = Length::nautical_miles(5);
};

/// How far apart the planned heights of two crews must be.
Length planned_height_difference(const SeparationMinima& minima);

/// Where one crew and the other come nearest.
struct Approach {
  Length distance;  ///< over the ground, between the two lines
  Position first;
  Position second;
  Instant first_time;
  Instant second_time;
  std::optional<Length> height_difference;  ///< the least on these pieces; none when not known
};

/// A stretch of time in which two crews are in conflict.
struct Conflict {
  Instant from;
  Instant to;
  Approach nearest;
};

/// The nearest approach whatever the heights and the bases; none when the crews are never in the
/// air within the time uncertainty of each other. Throws Error(value) for a negative minimum or
/// uncertainty.
std::optional<Approach> nearest_approach(const CrewTrack& first, const CrewTrack& second,
                                         const TrackUncertainty& uncertainty = {});

/// In order of time.
std::vector<Conflict> conflicts(const CrewTrack& first, const CrewTrack& second,
                                const SeparationMinima& minima = {});

/// The least whole minutes, up to `most`, by which `second` has to leave later so that the two are
/// apart; none when no such delay helps.
std::optional<std::chrono::minutes> delay_that_separates(const CrewTrack& first,
                                                         const CrewTrack& second,
                                                         const SeparationMinima& minima,
                                                         std::chrono::minutes most);

/// All pairs. Each conflict is a finding that names both crews, the place, time and distance, and
/// a cure: heights apart, or the delay that separates them. A pair of known heights must not fly;
/// where a height is not known the finding is a caution that says so. In the crews' order.
std::vector<Finding> check_separation(const std::vector<CrewTrack>& crews,
                                      const SeparationMinima& minima = {});

}  // namespace sweepwright::hazard
