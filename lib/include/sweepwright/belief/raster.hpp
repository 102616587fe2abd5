// Raster: a belief over very many small squares without names, for sums and maxima.
//
// Problem: dividing effort finely, and finding rectangles, want a million small cells; names and
//   ground of each would cost a hundred times what the numbers do.
// Conventions: squares of `step` on the ground laid flat by bearing and distance from the datum,
//   `columns` to the right and `rows` upward, the datum in the middle; row by row from below, each
//   from the left. Spans of `probability` go into update() as those of a Belief do; all squares
//   have the same area.
// Domain: 1 to kMostRasterCells cells.
// Accuracy: probabilities to 1e-15: each is a difference of normal distribution functions in each
//   direction (raster_test.cpp). Areas are flat: 4e-5 too large 100 km away from the datum.
// Source: the bivariate circular normal is the product of two normals.
#pragma once

#include <cstddef>
#include <vector>

#include "sweepwright/belief/datum.hpp"

namespace sweepwright::belief {

inline constexpr std::size_t kMostRasterCells = 100'000'000;

struct RasterSize {
  std::size_t columns = 0;
  std::size_t rows = 0;
};

struct Raster {
  RasterSize size;
  Length step;
  std::vector<double> probability;  ///< rows times columns of them
  double outside = 0;
  Area cell_area() const { return step * step; }
};

/// The belief of a datum. Throws Error(value) for a size or step outside the domain.
Raster raster(const Datum& datum, RasterSize size, Length step);

}  // namespace sweepwright::belief
