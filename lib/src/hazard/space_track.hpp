// A crew's track as straight pieces in space, for distances between crews anywhere on Earth.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "sweepwright/hazard/crew_track.hpp"

namespace sweepwright::hazard {

/// Metres from the Earth's centre, on the ellipsoid's surface.
using SpacePoint = std::array<double, 3>;

struct SpacePiece {
  SpacePoint start{};
  SpacePoint end{};
  double from_s = 0;  ///< seconds since the epoch
  double to_s = 0;
  std::optional<Length> lowest;
  std::optional<Length> highest;
};

/// Pieces of at most kLongestPiece, in order of time.
std::vector<SpacePiece> space_track(const CrewTrack& track);

inline constexpr Length kLongestPiece = Length::kilometres(2);

SpacePoint space_point(Position position);
Position position(const SpacePoint& point);

SpacePoint between(const SpacePoint& from, const SpacePoint& to, double share);
double distance_m(const SpacePoint& a, const SpacePoint& b);

}  // namespace sweepwright::hazard
