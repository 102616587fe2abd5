// Corner: the turn from one leg onto the next where both meet in one place, started early so that
// it runs out on the next leg.
//
// Problem: on an expanding square or a bend of a route a crew leads the turn: it leaves the leg
//   before the corner and joins the next one after it.
// Conventions: `lead_out` is the way along the first leg that is left out, `lead_in` that of the
//   second. Directions are tracks over the ground, both at the corner.
// Domain: turns of kNoTurn to kSharpestCorner of track; there is no corner turn beyond, nor when
//   the wind makes a lead negative: the crew then flies over the corner (join.hpp).
// Accuracy: both ends lie on the legs to 1e-9 of the radius (join_test.cpp).
// Promises: P1 in calm air both leads are R tan(turn / 2).
// Source: a turn is begun ahead of the leg's end [US National SAR Manual Vol I, 1991, para 642.B,
//   seen: about 15 seconds early]; the lead of a tangent circle is plane geometry.
#pragma once

#include <optional>

#include "sweepwright/flight/turn.hpp"
#include "sweepwright/flight/wind_triangle.hpp"

namespace sweepwright::flight {

/// Smaller changes of track are not flown as turns.
inline constexpr Angle kNoTurn = Angle::degrees(1);
/// Sharper changes of track are not cut: the leads would grow past any leg.
inline constexpr Angle kSharpestCorner = Angle::degrees(150);

/// A change of track of up to this that has no room for leads is followed along the legs, as bends
/// of a line of short legs are; sharper ones are flown over. Own choice.
inline constexpr Angle kBend = Angle::degrees(30);

struct Corner {
  Arc arc;
  Length lead_out;
  Length lead_in;
};

/// The arc from one heading to another to the side that a turn between the tracks takes.
Arc arc_between(const WindTriangle& from, const WindTriangle& to);

std::optional<Corner> corner(const WindTriangle& from, const WindTriangle& to,
                             const TurningFlight& flight);

}  // namespace sweepwright::flight
