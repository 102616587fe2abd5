// Coordinated creeping line (CSC): an aircraft creeps along with a vessel and passes over it on
// each leg.
//
// Problem: the vessel keeps the aircraft on its lines, and is near when something is seen. Both
//   must keep pace: the vessel makes one track spacing while the aircraft flies one leg and one
//   cross leg.
// Conventions: the vessel steams along the middle of the legs, at right angles to them, in the
//   direction of creep. The aircraft commences at one end of the first leg; when it passes the
//   middle of leg k (from 0), the vessel is there, k spacings along. So
//     vessel speed = spacing / T, T = half the leg length x (1/out + 1/back) + spacing / creep
//   with the aircraft's ground speeds out, back and along the creep. From the middle of a leg to
//   the middle of the next it always flies one half leg out and one back, so T is the same for all,
//   in wind too. In still air:
//     vessel speed = aircraft ground speed x spacing / (leg length + spacing)
//     leg length   = spacing x (aircraft ground speed / vessel speed - 1)
// Domain: a steady wind; turns cost nothing here: what they cost must be made up.
// Accuracy: the aircraft passes the vessel within 0.1 % of a spacing for legs up to 40 NM
//   (coordinated_creeping_line_test.cpp).
// Promises: P1 aircraft and vessel are at the same place at the middle of each leg.
// Source: pattern and formula [IAMSAR Manual Vol II, ch. 5, from memory; the formula also follows
//   from the rule above].
#pragma once

#include "sweepwright/pattern/pattern.hpp"

namespace sweepwright::pattern {

/// Ground speeds of the aircraft. In still air all are one.
struct LadderSpeeds {
  Speed out;    ///< on the first leg, and on each second one after it
  Speed back;   ///< on the others
  Speed creep;  ///< on the cross legs
};
inline LadderSpeeds still_air(Speed speed) {
  return {speed, speed, speed};
}

/// What the vessel does.
struct Pace {
  Speed vessel_speed;
  Length leg_length;  ///< of the aircraft
};

/// Throw Error(value) when a value is not above 0, or the vessel is not slower than the aircraft.
Pace pace_of_leg_length(Length leg_length, Length spacing, const LadderSpeeds& aircraft);
Pace pace_of_vessel(Speed vessel_speed, Length spacing, const LadderSpeeds& aircraft);

struct CoordinatedCreepingLine {
  Position start;             ///< commence search point of the aircraft
  TrueDirection first_track;  ///< of the aircraft's first leg, at the start
  Length spacing;
  int legs = 0;  ///< number of search legs, 1 to kMostLegs
  LadderSpeeds aircraft;
  Pace pace;
  Turn first_turn = Turn::right;
};

/// Where the vessel is when the aircraft commences, and the line that it keeps: from there to the
/// middle of the last leg.
struct VesselLine {
  Position at_commencement;
  Position at_last_leg;
};

VesselLine vessel_line(const CoordinatedCreepingLine& request);

/// The aircraft's legs; remarks say where the vessel is to be, its track and its speed. Throws as
/// make_ladder().
Pattern make_coordinated_creeping_line(const CoordinatedCreepingLine& request);

}  // namespace sweepwright::pattern
