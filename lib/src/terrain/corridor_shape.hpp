// Shapes of a corridor among the posts of a layer; private to the terrain room.
//
// Conventions: lattice coordinates (frame.hpp). Shapes are convex, and so what they hold of a row
//   of cells is one run of columns.
#pragma once

#include <array>
#include <optional>
#include <variant>
#include <vector>

#include "terrain/frame.hpp"

namespace sweepwright::terrain {

struct Run {
  double least = 0;
  double most = 0;
};

/// A rectangle on the ground, turned any way.
struct Quad {
  std::array<LatticePoint, 4> corners;
};

/// A circle on the ground.
struct Oval {
  LatticePoint centre;
  double u_radius = 0;
  double v_radius = 0;
};

/// All columns of some rows: round a pole.
struct Band {
  double v_least = 0;
  double v_most = 0;
};

using Shape = std::variant<Quad, Oval, Band>;

/// Rows that the shape reaches.
Run rows_of(const Shape& shape);

/// The columns that the shape reaches in rows `v.least` to `v.most`; none when it does not. For a
/// band all of `whole`.
std::optional<Run> columns_of(const Shape& shape, Run v, Run whole);

/// A straight stretch of a path.
struct Stretch {
  Position start;
  Position middle;
  Position end;
  Length length;
  bool round_start = false;  ///< whether the corridor ends here with a half circle
  bool round_end = false;
};

/// Shapes that hold the corridor of a stretch, and little more. None where the frame does not
/// reach.
std::optional<std::vector<Shape>> corridor_shapes(const Frame& frame, const Stretch& stretch,
                                                  Length half_width);

}  // namespace sweepwright::terrain
