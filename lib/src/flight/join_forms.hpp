// The forms of a join, each solved by itself; private to the flight room.
//
// Everything here is scaled: lengths in turn radii, time in radians of turn, so that the crew flies
// one radius in a unit of time. Headings in radians, clockwise from north.
#pragma once

#include <array>
#include <optional>

#include "sweepwright/flight/join.hpp"

namespace sweepwright::flight {

struct Vector {
  double east = 0;
  double north = 0;
};

struct JoinProblem {
  double from = 0;  ///< heading on leaving
  double to = 0;    ///< heading on arriving
  Vector way;       ///< over the ground
  Vector wind;      ///< shorter than 1
};

struct JoinSolution {
  TurnForm form = TurnForm::plain;
  std::array<double, 3> turns{};  ///< positive to the right
  double straight = 0;            ///< time of straight flight after the first turn
  double time = 0;                ///< of all
};

/// To which side the first turn goes.
enum class Side { left, right };

/// Two turns to one side, `circles` whole circles (0 or 1) more than needed.
std::optional<JoinSolution> plain_join(const JoinProblem& problem, Side side, int circles);
/// A turn to one side, then one to the other.
std::optional<JoinSolution> crossed_join(const JoinProblem& problem, Side side);
/// Turns to one side, to the other and to the first again.
std::optional<JoinSolution> teardrop_join(const JoinProblem& problem, Side side);

}  // namespace sweepwright::flight
