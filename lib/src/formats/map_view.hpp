// MapView: where places on the ground lie on the paper; private to the formats room.
//
// Conventions: the ground is laid out on a LocalPlane, whose `up` is up on the paper. Geodesics
//   are straight on the paper; the scale is that at the plane's centre.
// Domain: a place beyond the plane's reach is drawn at its edge, in the right direction from the
//   centre; no map shows that edge unless its sector is as large as that.
#pragma once

#include <vector>

#include "formats/map_geometry.hpp"
#include "sweepwright/formats/drawing.hpp"
#include "sweepwright/position/local_plane.hpp"
#include "sweepwright/position/region.hpp"

namespace sweepwright::formats {

class MapView {
 public:
  /// The largest scale at which all of `shown` lies in `room`; the map itself fills `frame`.
  MapView(LocalPlane plane, const std::vector<Position>& shown, PaperBox frame, PaperBox room);

  const PaperBox& frame() const { return frame_; }
  double mm_per_metre() const { return mm_per_metre_; }
  double on_paper_mm(Length ground) const { return ground.metres() * mm_per_metre_; }

  PaperPoint to_paper(Position position) const;
  Position to_position(PaperPoint point) const;
  bool shows(Position position) const { return contains(frame_, to_paper(position)); }
  bool in_reach(Position position) const;

  PaperArea to_paper(const Region& region) const;

 private:
  LocalPlane plane_;
  PaperBox frame_;
  double mm_per_metre_ = 1;
  PaperPoint origin_;  ///< where the plane's centre lies
};

/// All corners of a region.
std::vector<Position> corners(const Region& region);

}  // namespace sweepwright::formats
