// ElevationModel: the height of the ground, from any number of tiles read as one.
//
// Problem: a search area seldom fits into one elevation file. Tiles of the same lattice are joined
//   without a seam; tiles of other lattices (another resolution, another projection) lie under
//   them, and the finest that knows a place answers.
// Conventions: heights above mean sea level. Between posts the surface is bilinear. A gap is a
//   place without height: nothing is ever filled in. Round the outer posts of kind `area` half a
//   step is still known, with the post's height.
// Domain: everywhere; longitudes go on across the antimeridian, and round the Earth when the
//   columns fit it.
// Accuracy: heights as in the tiles, to single precision (0.5 mm at 8,000 m); bilinear sampling
//   agrees with gdallocationinfo -r bilinear to 1 mm (elevation_model_test.cpp).
// Promises: P1 a place at a post has that post's height; P2 no height is given where one of the
//   posts that it depends on is missing; P3 the order of tiles on one lattice does not matter.
// Source: own work; bilinear interpolation is common practice.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "sweepwright/position/position.hpp"
#include "sweepwright/terrain/elevation_tile.hpp"

namespace sweepwright::terrain {

struct Layer;

class ElevationModel {
 public:
  /// Checks each tile: Error(value) names the source of a bad one. Without tiles all is one gap.
  explicit ElevationModel(std::vector<ElevationTile> tiles = {});

  const std::vector<ElevationTile>& tiles() const;
  /// Tiles that lie on one lattice, finest first; for this room's own use.
  const std::vector<Layer>& layers() const;

 private:
  struct Content;
  std::shared_ptr<const Content> content_;  ///< never changed, so that models are cheap to copy
};

/// Height of the ground at a place; none in a gap.
std::optional<Length> height(const ElevationModel& model, Position position);

/// Vertical references of the tiles, each once, in the order of the tiles; `not stated` for a tile
/// that names none.
std::vector<std::string> vertical_references(const ElevationModel& model);

}  // namespace sweepwright::terrain
