// The heights at which a contour search flies; private to the pattern room.
#pragma once

#include <optional>
#include <vector>

#include "pattern/ground_lattice.hpp"

namespace sweepwright::pattern {

struct ContourLevel {
  Length height;  ///< of the ground under its lines
  /// Nodes of the lattice near which its lines are flown; empty: all lines of that height.
  std::vector<bool> only;
};

/// The difference of height between levels: asked for, or worked out from the slopes. Throws
/// Error(value) for one not above 0, Error(impossible) for ground that is too flat.
Length height_step(const GroundLattice& lattice, Length spacing, std::optional<Length> asked);

/// Levels from the highest down. The first lies half a step under the highest ground; a summit that
/// stands out more than half a step over the level below it, and a hollow that lies as much under
/// the level above it, gets a level of its own. Throws Error(value) for too many levels.
std::vector<ContourLevel> contour_levels(const SearchedGround& ground, const GroundLattice& lattice,
                                         Length step);

}  // namespace sweepwright::pattern
