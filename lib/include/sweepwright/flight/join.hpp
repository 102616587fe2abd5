// Join: how a crew gets from the end of one leg onto the start of another, in the wind, in the
// least time.
//
// Problem: legs are flown to their ends. From there the crew must turn, perhaps fly straight, and
//   turn again so that it comes to the next leg's start on that leg's heading. Neighbouring legs
//   closer than the turn's diameter need more than a turn of 180 degrees: a teardrop.
// Method: all turns at the one rate, wind steady. Forms tried, with circles in the air that the
//   wind carries:
//     plain     two turns to the same side, straight flight between;
//     crossed   two turns to opposite sides, straight flight between;
//     teardrop  three turns, each to the other side than the one before.
//   A plain join that turns through no more than kPlainTurn is taken when there is one (the
//   shorter of right and left); else the quickest of all forms, which is what costs time to
//   compute.
// Conventions: the way from the leg's end to the next start, and both headings, as seen at the
//   leg's end.
// Domain: any way; a wind under the airspeed. Error(impossible) when no form leads there.
// Accuracy: the parts lead to the next start within 1 mm (join_test.cpp).
// Promises: P1 in calm air the join is not longer than the shortest path of bounded curvature by
//   more than 0.01 of the radius; P2 mirrored left to right, the join is mirrored
//   (join_test.cpp).
// Source: L. E. Dubins, On curves of minimal length with a constraint on average curvature,
//   American Journal of Mathematics 79 (1957): the six forms (from memory). In the wind, the same
//   forms with moving circles: own derivation, checked against integration.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include "sweepwright/flight/turn.hpp"

namespace sweepwright::flight {

/// More than half a turn, so that a crosswind's two wind corrections fit.
inline constexpr Angle kPlainTurn = Angle::degrees(210);

enum class TurnForm {
  led,  ///< cuts the corner between two legs that meet (corner.hpp)
  plain,
  crossed,
  teardrop,
};
std::string_view name(TurnForm form);

/// Straight flight between two turns.
struct Straight {
  TrueDirection heading;
  TrueDirection track;
  Duration time{};
  Speed ground_speed;
};

struct Join {
  TurnForm form = TurnForm::plain;
  std::array<Arc, 3> arcs{};  ///< the last is empty but for a teardrop
  Straight straight;          ///< after the first arc; of no time in a teardrop
  Duration time{};            ///< of all parts
};

struct JoinEnds {
  TrueDirection from;  ///< heading on leaving
  TrueDirection to;    ///< heading on arriving
  Offset way;          ///< over the ground
};

Join join(const JoinEnds& ends, const TurningFlight& flight);

}  // namespace sweepwright::flight
