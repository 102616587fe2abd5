// Expanding square search, single unit (SS): outwards from the datum in squares.
//
// Conventions: the commence search point is the datum; legs are 1, 1, 2, 2, 3, 3, ... spacings long
//   with a turn of 90 degrees to the same side between them. All legs are search legs.
// Use: a small area round a datum that is well known.
// Promises: P1 n legs are m(m+1) spacings long in all for n = 2m, and (m+1)^2 for n = 2m+1.
// Source: start at datum, 90-degree turns, growth rule [US Coast Guard Auxiliary training slides,
//   seen]; two patterns over the same datum on tracks 45 degrees apart [US National SAR Manual
//   Vol I, 1991, para 552, seen; it does not say to which side]; designator SS [IAMSAR Manual
//   Vol II, ch. 5, from memory]. Manuals differ on the first track (into the wind, or down drift):
//   it is always the caller's choice, and a remark says which it was.
#pragma once

#include "sweepwright/pattern/pattern.hpp"

namespace sweepwright::pattern {

/// What the first leg was laid along, where the caller says it.
enum class FirstLeg { as_given, upwind, downdrift };
/// `upwind`, `downdrift`. Throws Error(value).
FirstLeg parse_first_leg(std::string_view name);

struct ExpandingSquare {
  Position datum;
  TrueDirection first_track;
  Length spacing;  ///< above 0
  int legs = 0;    ///< number of all legs, 1 to 1000
  Turn first_turn = Turn::right;
  /// The second pattern over the same datum: turned 45 degrees to the side of the first turn.
  bool second = false;
  /// How the first track was chosen, for the remark; the track itself is `first_track`.
  FirstLeg first_leg = FirstLeg::as_given;
};

/// Throws Error(value) when a number is out of range.
Pattern make_expanding_square(const ExpandingSquare& request);

/// Length of all of the first `legs` legs.
Length expanding_square_distance(int legs, Length spacing);

}  // namespace sweepwright::pattern
