// Visits every cell of an elevation model that a stretch of a corridor touches; private to the
// terrain room.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/terrain/corridor.hpp"
#include "terrain/corridor_shape.hpp"
#include "terrain/layer.hpp"

namespace sweepwright::terrain {

struct Scan {
  std::optional<HighGround> highest;
  bool known = false;
};

/// Keeps its buffers from one stretch to the next.
class CorridorScanner {
 public:
  explicit CorridorScanner(const ElevationModel& model);

  Scan scan(const Stretch& stretch, Length half_width);

 private:
  /// The highest post so far, not yet turned into a place.
  struct Top {
    float height_m;
    const Layer* layer;
    long row;
    long column;
  };
  /// Posts `first` to `last` of a row; none when last < first.
  struct Posts {
    long first = 0;
    long last = -1;
  };

  bool scan_layer(std::size_t index, const std::vector<Shape>& shapes);
  bool scan_shape(std::size_t index, const Shape& shape);
  bool scan_row(std::size_t index, long row, Posts posts, Posts must_be_known);
  /// Whether the other layers know the ground that depends on a missing post.
  bool others_know(std::size_t index, long row, long column) const;

  const std::vector<Layer>& layers_;
  std::vector<Extent> extents_;  ///< one for each layer
  std::optional<Top> top_;
  std::vector<float> row_;
};

}  // namespace sweepwright::terrain
