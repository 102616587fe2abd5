// The nearest approach of two pieces of track whose times may be shifted against each other.
#pragma once

#include <optional>

#include "space_track.hpp"

namespace sweepwright::hazard {

struct PieceApproach {
  double distance_m = 0;
  double first_s = 0;   ///< the time on the first piece
  double second_s = 0;  ///< and on the second
};

/// The least distance between a place of `a` at s and one of `b` at u with |s - u| <= shift_s; none
/// when there are no such times.
std::optional<PieceApproach> piece_approach(const SpacePiece& a, const SpacePiece& b,
                                            double shift_s);

SpacePoint place_at(const SpacePiece& piece, double time_s);

}  // namespace sweepwright::hazard
