// A raster of a datum holds what SciPy's table and the closed form say, and is updated as cells
// are.
#include "sweepwright/belief/raster.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/ground.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/belief/probability_sum.hpp"
#include "sweepwright/belief/update.hpp"

namespace sweepwright::belief {
namespace {

const Datum kDatum{test::at(60, -180), Length::metres(1000)};

// tests/checks/belief/normal_boxes.csv: SciPy's integrals over +-500 m and +-4000 m.
TEST(Raster, agrees_with_scipy) {
  EXPECT_NEAR(raster(kDatum, {1, 1}, Length::metres(1000)).probability[0], 0.197083455518, 1e-12);
  EXPECT_NEAR(sum(raster(kDatum, {80, 80}, Length::metres(100)).probability), 0.999995036914,
              1e-12);
}

// Closed form 1 - exp(-R^2 / (2 s^2)) = 1/2 for R = E: cells by their middle, fine enough.
TEST(Raster, half_lies_within_the_error) {
  const Raster fine = raster(kDatum, {1000, 1000}, Length::metres(4));
  double within = 0;
  for (std::size_t i = 0; i < fine.probability.size(); ++i) {
    const double right = (static_cast<double>(i % 1000) - 499.5) * 4;
    const double up = (static_cast<double>(i / 1000) - 499.5) * 4;
    if (std::hypot(right, up) < 1000) within += fine.probability[i];
  }
  EXPECT_NEAR(within, 0.5, 2e-4);
  EXPECT_NEAR(sum(fine.probability) + fine.outside, 1, 1e-13);
}

TEST(Raster, is_updated_as_cells_are) {
  Raster fine = raster(kDatum, {30, 20}, Length::metres(50));
  const double inside = sum(fine.probability);
  const double found =
      update(fine.probability, fine.outside, std::vector<double>(fine.probability.size(), 0.5));
  EXPECT_NEAR(found, inside / 2, 1e-15);
  EXPECT_NEAR(sum(fine.probability) + fine.outside, 1, 1e-14);
}

TEST(Raster, refuses_what_is_too_large_or_nothing) {
  const Length step = Length::metres(10);
  EXPECT_THROW(raster(kDatum, {0, 5}, step), Error);
  EXPECT_THROW(raster(kDatum, {1'000'000'000, 1'000'000'000}, step), Error);
  EXPECT_THROW(raster(kDatum, {5, 5}, Length()), Error);
  EXPECT_THROW(raster({kDatum.position, Length()}, {5, 5}, step), Error);
}

}  // namespace
}  // namespace sweepwright::belief
