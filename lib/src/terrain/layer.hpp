// Layer: tiles that lie on one lattice, read as if they were one; private to the terrain room.
//
// Problem: neighbouring files share their edge posts, or abut without sharing any. On a common
//   lattice the seam between them vanishes: cells and lines go on across it.
// Conventions: rows and columns count from the first tile's north-west post. Where tiles overlap
//   the higher of two heights counts: nothing high may be lost. Post values are metres, NaN a gap;
//   a place without a tile is a gap too.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "terrain/frame.hpp"

namespace sweepwright::terrain {

struct PlacedTile {
  long row = 0;
  long column = 0;
  const ElevationTile* tile = nullptr;
};

struct Layer {
  Frame frame;
  PostKind posts = PostKind::point;
  std::vector<PlacedTile> tiles;
  long columns_round = 0;  ///< columns once round the Earth when that is a whole number, else 0
};

/// Puts each tile into a layer, finest layer first. The tiles must outlive the layers.
std::vector<Layer> make_layers(const std::vector<ElevationTile>& tiles);

/// Heights of the posts of one row from column `first` on.
void read_row(const Layer& layer, long row, long first, std::span<float> out);

float post_height(const Layer& layer, long row, long column);

/// Height of the bilinear surface, or of the nearest post within an `area` post's ground; none in a
/// gap.
std::optional<Length> surface_height(const Layer& layer, Position position);

/// Rows and columns of the layer that any tile covers, ends included.
struct Extent {
  long first_row = 0;
  long last_row = -1;
  long first_column = 0;
  long last_column = -1;
};
Extent extent(const Layer& layer);

}  // namespace sweepwright::terrain
