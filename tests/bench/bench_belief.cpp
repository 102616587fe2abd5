// A belief over a million squares and its update, beside the plain loops that a user would write:
// the density at each square's middle, and Bayes' rule with a running sum. The plain loops lose
// what we keep: integration, and a sum that does not depend on the order.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdlib>
#include <numbers>
#include <vector>

#include "sweepwright/belief/raster.hpp"
#include "sweepwright/belief/update.hpp"

namespace {

using namespace sweepwright;

constexpr std::size_t kSide = 1000;
const Length kStep = Length::metres(50);
const belief::Datum kDatum{Position(), Length::nautical_miles(5)};

void require_near(double found, double wanted) {
  if (std::abs(found - wanted) > 1e-6) std::abort();
}

std::vector<double> densities_at_middles() {
  std::vector<double> found(kSide * kSide);
  const double s = belief::deviation(kDatum.error).metres();
  const double d = kStep.metres();
  for (std::size_t row = 0; row < kSide; ++row) {
    for (std::size_t column = 0; column < kSide; ++column) {
      const double x = (static_cast<double>(column) + 0.5 - kSide / 2.0) * d;
      const double y = (static_cast<double>(row) + 0.5 - kSide / 2.0) * d;
      found[row * kSide + column] =
          std::exp(-(x * x + y * y) / (2 * s * s)) * d * d / (2 * std::numbers::pi * s * s);
    }
  }
  return found;
}

void belief_of_a_million_squares(benchmark::State& state) {
  for (auto _ : state) {
    const belief::Raster raster = belief::raster(kDatum, {kSide, kSide}, kStep);
    require_near(raster.outside, 0.002956016165);  // SciPy: erfc of 25 km in deviations
    benchmark::DoNotOptimize(raster.probability.data());
  }
}
BENCHMARK(belief_of_a_million_squares)->Unit(benchmark::kMillisecond);

void plain_density_of_a_million_squares(benchmark::State& state) {
  for (auto _ : state) {
    const std::vector<double> found = densities_at_middles();
    benchmark::DoNotOptimize(found.data());
  }
}
BENCHMARK(plain_density_of_a_million_squares)->Unit(benchmark::kMillisecond);

void update_of_a_million_squares(benchmark::State& state) {
  belief::Raster raster = belief::raster(kDatum, {kSide, kSide}, kStep);
  const std::vector<double> pod(kSide * kSide, 0.01);
  for (auto _ : state) {
    benchmark::DoNotOptimize(belief::update(raster.probability, raster.outside, pod));
  }
}
BENCHMARK(update_of_a_million_squares)->Unit(benchmark::kMillisecond);

void plain_update_of_a_million_squares(benchmark::State& state) {
  belief::Raster raster = belief::raster(kDatum, {kSide, kSide}, kStep);
  const std::vector<double> pod(kSide * kSide, 0.01);
  for (auto _ : state) {
    double found = 0;
    for (std::size_t i = 0; i < pod.size(); ++i) found += raster.probability[i] * pod[i];
    for (std::size_t i = 0; i < pod.size(); ++i) {
      raster.probability[i] = raster.probability[i] * (1 - pod[i]) / (1 - found);
    }
    benchmark::DoNotOptimize(found);
  }
}
BENCHMARK(plain_update_of_a_million_squares)->Unit(benchmark::kMillisecond);

}  // namespace
