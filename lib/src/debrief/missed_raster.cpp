#include "debrief/missed_raster.hpp"

#include <algorithm>
#include <cmath>

namespace sweepwright::debrief {
namespace {

/// Sums over 2 half + 1 neighbours along one line of a raster.
void sum_along(const double* from, double* to, std::size_t count, std::size_t stride,
               std::size_t half) {
  double sum = 0;
  for (std::size_t i = 0; i < std::min(half, count); ++i) sum += from[i * stride];
  for (std::size_t i = 0; i < count; ++i) {
    if (i + half < count) sum += from[(i + half) * stride];
    if (i > half) sum -= from[(i - half - 1) * stride];
    to[i * stride] = std::max(sum, 0.0);
  }
}

}  // namespace

std::vector<double> windowed_mean(const std::vector<double>& values, const CoverageFrame& frame,
                                  Length window) {
  const auto half =
      static_cast<std::size_t>(std::max(0.0, std::round((window / frame.cell - 1) / 2)));
  std::vector<double> rows(values.size());
  std::vector<double> sums(values.size());
  for (std::size_t row = 0; row < frame.rows; ++row) {
    sum_along(&values[row * frame.columns], &rows[row * frame.columns], frame.columns, 1, half);
  }
  for (std::size_t column = 0; column < frame.columns; ++column) {
    sum_along(&rows[column], &sums[column], frame.rows, frame.columns, half);
  }
  const double side = 2 * static_cast<double>(half) + 1;
  for (double& sum : sums) sum /= side * side;
  return sums;
}

std::vector<float> raster_pod(const CoverageMap& map, sweep::DetectionLaw law, Length window) {
  std::vector<float> pods(map.frame.cells());
  if (law == sweep::DetectionLaw::exponential) {
    const std::vector<double> effort = windowed_mean(map.effort_m2, map.frame, window);
    const double ground = map.frame.cell_area().square_metres();
    for (std::size_t i = 0; i < pods.size(); ++i) {
      pods[i] = static_cast<float>(-std::expm1(-effort[i] / ground));
    }
    return pods;
  }
  for (std::size_t i = 0; i < pods.size(); ++i) pods[i] = static_cast<float>(pod(map, i, law));
  return pods;
}

}  // namespace sweepwright::debrief
