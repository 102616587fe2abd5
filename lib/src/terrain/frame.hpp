// Frame: where the posts of a layer lie on the ground, and where a place lies among the posts;
// private to the terrain room.
//
// Conventions: lattice coordinates count posts from the layer's first one: u eastwards, v
//   southwards. Accuracy: 1e-9 posts for geographic lattices; nanometres for UTM (through
//   GeographicLib).
#pragma once

#include <optional>

#include "sweepwright/position/position.hpp"
#include "sweepwright/terrain/elevation_tile.hpp"

namespace sweepwright::terrain {

struct LatticePoint {
  double u = 0;
  double v = 0;
};

/// A rectangle in lattice coordinates, sides included.
struct LatticeBox {
  double u_least = 0;
  double u_most = 0;
  double v_least = 0;
  double v_most = 0;
};

/// Metres on the ground for one post.
struct Metric {
  double metres_per_u = 0;
  double metres_per_v = 0;
};

class Frame {
 public:
  /// `columns` and `rows`: of the first tile; longitudes are unrolled about its middle.
  Frame(const Lattice& lattice, int columns) : lattice_(lattice), middle_u_(columns / 2.0) {}

  /// None where the projection cannot be used: far outside a UTM zone.
  std::optional<LatticePoint> to_lattice(Position position) const;
  Position to_position(LatticePoint point) const;

  /// Columns once round the Earth; none for UTM.
  std::optional<double> columns_round_the_earth() const;

  /// `point` moved by whole turns of the Earth to lie near `to`.
  LatticePoint unrolled(LatticePoint point, LatticePoint to) const;

  /// Metric that is nowhere in the box larger than the true one.
  Metric least_metric(const LatticeBox& box) const;

  /// The box round all places within `radius` of `centre`, or larger; none where it cannot be said.
  std::optional<LatticeBox> box_round(Position centre, Length radius) const;

  /// Where another lattice's first post lies among the posts of this one, when both are of one kind
  /// (and zone) and have the same steps, to a hundredth of a step over `posts` posts.
  std::optional<LatticePoint> offset_of(const Lattice& other, int posts) const;

 private:
  Lattice lattice_;
  double middle_u_;
};

}  // namespace sweepwright::terrain
