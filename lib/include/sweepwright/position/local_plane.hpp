// LocalPlane: a flat map round a place on which every shortest line is a straight line.
//
// Problem: set operations (cutting an area, clipping a leg) are done in a plane. On this one, the
//   ellipsoidal gnomonic, a straight cut is a geodesic, so pieces of an area share their edges
//   exactly and need no extra points along them. Distances and areas are never measured on it:
//   geodesic() and area() do that.
// Conventions: `up` points along the plane's axis at its centre, `right` 90 degrees clockwise of
// it. Domain: places within kLocalPlaneReach of the centre; to_plane() throws Error(geometry)
// beyond. Accuracy: a straight segment stays within f/8 (r/a)^3 r of the geodesic between its ends
// (f, a the
//   ellipsoid's flattening and radius, r the distance from the centre): 3 mm at r = 200 km, 1.7 m
//   at 1000 km. The projection itself is right to nanometres (local_plane_test.cpp).
// Source: C. F. F. Karney, Algorithms for geodesics (2013), section 8, through GeographicLib.
#pragma once

#include "sweepwright/base/direction.hpp"
#include "sweepwright/position/position.hpp"

namespace sweepwright {

/// How far from its centre a LocalPlane may be used.
inline constexpr Length kLocalPlaneReach = Length::kilometres(1000);

/// A point on a LocalPlane. Plane lengths are not ground lengths away from the centre.
struct PlanePoint {
  Length right;
  Length up;
};

class LocalPlane {
 public:
  explicit LocalPlane(Position centre, TrueDirection axis = {}) : centre_(centre), axis_(axis) {}
  Position centre() const { return centre_; }
  TrueDirection axis() const { return axis_; }
  PlanePoint to_plane(Position position) const;
  Position to_position(PlanePoint point) const;

 private:
  Position centre_;
  TrueDirection axis_;
};

}  // namespace sweepwright
