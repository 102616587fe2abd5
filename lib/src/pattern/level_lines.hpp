// Lines of equal height made fit to fly: cut to an area, thinned out, joined nearest first; private
// to the pattern room.
#pragma once

#include <optional>
#include <vector>

#include "pattern/ground_lattice.hpp"
#include "sweepwright/pattern/pattern.hpp"

namespace sweepwright::pattern {

/// A line of equal height. A closed one repeats its first point.
struct LevelLine {
  std::vector<PlanePoint> points;
  bool closed = false;
};

/// What makes a line fit to fly.
struct LevelLineFit {
  Length shortest;   ///< shorter ones are left out
  Length tolerance;  ///< points that the line stays this near to without are left out
  Turn high_ground;  ///< on which side of a closed line
};

/// The parts of the model's lines that lie in the region.
std::vector<LevelLine> level_lines(const SearchedGround& ground, Length height,
                                   const LevelLineFit& fit);

/// Takes out of `lines` the one that begins nearest to `from`, the longest when there is no `from`.
/// A closed one is begun where it is nearest, an open one at its nearer end. Throws
/// std::out_of_range when there is none.
LevelLine take_nearest(std::vector<LevelLine>& lines, std::optional<PlanePoint> from);

}  // namespace sweepwright::pattern
