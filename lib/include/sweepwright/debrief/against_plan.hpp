// AgainstPlan: how a crew flew its pattern: cross-track error, spacing as flown, legs missed.
//
// Method: a stretch of track belongs to the planned search leg that it runs along (within
//   kMostAskew, either way), beside which it lies, and to which it is nearest, if it is nearer than
//   half the track spacing. The share flown of a leg is the part of its length beside which such
//   stretches lie, overlaps once. The offset of a leg is the mean of its stretches' distances from
//   the planned line, weighted by length; the spacing as flown between two legs that follow each
//   other side by side is the planned one with both offsets put in.
// Conventions: offsets are positive to the right of the leg as planned. Stretches off task or above
//   cloud do not count as flown; turns and stretches outside the sector do.
// Domain: any pattern. A crew that keeps an offset of more than half the spacing is taken to fly
//   the next leg: the legs missed then tell.
// Accuracy: distances are measured on a flat map round the sector's middle, 0.03 % too long 100 km
//   away from it (against_plan_test.cpp).
// Promises: P1 flying the planned legs gives offsets of 0, shares of 1 and the planned spacing
//   (against_plan_test.cpp).
// Source: own work; cross-track error as in navigation.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "sweepwright/debrief/sortie.hpp"

namespace sweepwright::debrief {

inline constexpr Angle kMostAskew = Angle::degrees(30);
/// A leg of which less was flown counts as missed; own choice.
inline constexpr double kMissedBelow = 0.1;
/// A leg of which more was flown counts as flown; own choice.
inline constexpr double kFlownFrom = 0.9;

struct LegAsFlown {
  int number = 0;  ///< of the pattern's leg, from 1
  Length length;   ///< as planned
  double flown_share = 0;
  Length mean_offset;    ///< positive to the right
  Length mean_error;     ///< mean distance from the planned line, without sign
  Length largest_error;  ///< without sign
  /// To the next search leg, when that lies beside this one and both were flown.
  std::optional<Length> spacing_to_next;
};

struct AgainstPlan {
  std::vector<LegAsFlown> legs;  ///< search legs, in the order of the pattern
  int missed = 0;                ///< legs with less than kMissedBelow of them flown
  int partly = 0;                ///< legs between kMissedBelow and kFlownFrom
  double flown_share = 0;        ///< of all search legs together, by length
  Length mean_error;             ///< over all that was flown, without sign
  Length largest_error;
  Length planned_spacing;
  std::optional<Length> mean_spacing;
  std::optional<Length> widest_spacing;
};

AgainstPlan against_plan(const plan::Assignment& assignment, std::span<const FlownPiece> pieces);

}  // namespace sweepwright::debrief
