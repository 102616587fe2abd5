// Whether layers know all of a piece of ground; private to the terrain room.
#pragma once

#include <span>

#include "terrain/layer.hpp"

namespace sweepwright::terrain {

/// Ground between parallels and meridians in degrees; longitudes run on past 180, west <= east.
struct GroundBox {
  double south = 0;
  double north = 0;
  double west = 0;
  double east = 0;
};

/// The ground that has no height when the post has none.
LatticeBox ground_of_post(const Layer& layer, long row, long column);

/// The smallest box round a rectangle of the layer's lattice.
GroundBox ground_box(const Layer& layer, const LatticeBox& box);

/// True when the layers together know every place of the box. May say false where lattices of
/// different projections meet, never true wrongly.
bool all_known(std::span<const Layer* const> layers, const GroundBox& box);

}  // namespace sweepwright::terrain
