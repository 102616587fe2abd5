// The track ahead: where a crew will be, minute by minute or mile by mile, and when it meets a
// boundary.
//
// Conventions: the crew keeps to the shortest line that leaves its position on its track, at one
//   ground speed. Marks begin one step ahead. Times count from now.
// Domain: distances up to kFarthestAhead; a ground speed above 0; a boundary within
//   kLocalPlaneReach of its own middle.
// Accuracy: marks as geodesic.hpp; where a boundary is met, 2 m (track_ahead_test.cpp).
// Promises: P1 the meetings alternate between entering and leaving, nearest first, unless the
//   track runs along an edge.
// Source: geodesics are straight on a gnomonic plane (position/local_plane.hpp).
#pragma once

#include <vector>

#include "sweepwright/position/region.hpp"

namespace sweepwright::flight {

inline constexpr Length kFarthestAhead = Length::kilometres(2000);
/// More marks than a map can show.
inline constexpr int kMostMarks = 1000;

struct PresentMotion {
  Position position;
  TrueDirection track;
  Speed ground_speed;
};

struct PlaceAhead {
  Position position;
  TrueDirection track;  ///< there
  Length distance;
  Duration time{};
};

/// Throws Error(value) outside the domain, or for more than kMostMarks.
std::vector<PlaceAhead> marks_ahead(const PresentMotion& motion, Length step, Length until);

struct BoundaryMeeting {
  PlaceAhead place;
  bool entering = false;
};

/// Where the track crosses the region's edges before `until`, nearest first.
std::vector<BoundaryMeeting> boundary_meetings(const PresentMotion& motion, Length until,
                                               const Region& boundary);

}  // namespace sweepwright::flight
