// Track line search, single unit (TSR, TSN): passes along the route that the object was to take.
//
// Use: somebody is overdue on a route that is known, and nothing else is: searched at once, since
//   the object is likeliest on its route.
// Conventions: the number of passes says which form it is.
//     even   TSR: out on one side of the route and back on the other, half a spacing from it, then
//            one spacing further out on each side with each further pair; ends where it began
//     odd    TSN: along the route itself, then back and out one spacing to each side, and so on;
//            ends at the far end of the route
//   All turns are to one side, so the passes wind outwards from the route: whenever the crew must
//   leave, the ground nearest to the route is done. With turns to the right TSR begins on the left
//   of the route. Passes begin and end abeam the route's ends.
// Accuracy: no point within passes x spacing / 2 beside the route is farther from a pass than half
//   a spacing, on the inside of a bend of angle b than spacing / (1 + cos(b/2)): 0.54 spacings at
//   60 degrees, 0.59 at 90, 0.67 at 120 (track_line_test.cpp). Otherwise as route.hpp.
// Source: first pass half a spacing from the track, later ones a whole spacing [civil air search
//   training text, sec. 8.2, seen]; TSR returns beside the track, TSN (along the track, then once
//   on each side) ends at the far end [IAMSAR Manual Vol II, ch. 5, from memory]; the order of
//   passes after the third is worked out here.
#pragma once

#include "sweepwright/pattern/pattern.hpp"
#include "sweepwright/pattern/route.hpp"

namespace sweepwright::pattern {

struct TrackLine {
  Path route;      ///< in the order in which it is first flown
  Length spacing;  ///< above 0
  int passes = 2;  ///< 1 to kMostTrackLinePasses
  Turn first_turn = Turn::right;
};

inline constexpr int kMostTrackLinePasses = 50;

/// Throws Error(value) when a number is out of range, Error(geometry) for a route that cannot be
/// followed (route.hpp), Error(impossible) when a pass has no room beside the route.
Pattern make_track_line(const TrackLine& request);

}  // namespace sweepwright::pattern
