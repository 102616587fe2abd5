#include "sweepwright/belief/raster.hpp"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "sweepwright/base/error.hpp"

namespace sweepwright::belief {
namespace {

/// The share of a normal in each of `count` steps that lie evenly about its middle.
std::vector<double> shares_of_steps(std::size_t count, double step_in_deviations) {
  std::vector<double> shares(count);
  const auto below = [&](std::size_t i) {
    const double t = (static_cast<double>(i) - static_cast<double>(count) / 2) * step_in_deviations;
    return std::erfc(-t / std::numbers::sqrt2) / 2;
  };
  double left = below(0);
  for (std::size_t i = 0; i < count; ++i) {
    const double right = below(i + 1);
    shares[i] = right - left;
    left = right;
  }
  return shares;
}

/// What lies beyond the outermost of those steps, on both sides.
double share_beyond(std::size_t count, double step_in_deviations) {
  return std::erfc(static_cast<double>(count) / 2 * step_in_deviations / std::numbers::sqrt2);
}

}  // namespace

Raster raster(const Datum& datum, RasterSize size, Length step) {
  if (size.columns == 0 || size.rows == 0 || size.columns > kMostRasterCells ||
      size.rows > kMostRasterCells / size.columns) {
    throw Error(ErrorCode::value,
                fmt::format("a raster of {} by {} cells", size.columns, size.rows),
                fmt::format("take 1 to {} cells", kMostRasterCells));
  }
  if (!(step > Length()) || !(datum.error >= kLeastError && datum.error <= kLargestError)) {
    throw Error(ErrorCode::value, "the step or the total probable error is outside its range",
                "the step is above 0, the error from 1 m to 300 km");
  }
  const double steps = step / deviation(datum.error);
  const std::vector<double> across = shares_of_steps(size.columns, steps);
  const std::vector<double> up = shares_of_steps(size.rows, steps);
  Raster raster{size, step, std::vector<double>(size.columns * size.rows), 0};
  auto* cell = raster.probability.data();
  for (const double row : up) {
    for (const double column : across) *cell++ = row * column;
  }
  const double beyond_side = share_beyond(size.columns, steps);
  const double beyond_end = share_beyond(size.rows, steps);
  raster.outside = beyond_side + beyond_end - beyond_side * beyond_end;
  return raster;
}

}  // namespace sweepwright::belief
