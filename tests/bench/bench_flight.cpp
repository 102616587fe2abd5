// A pattern of 200 legs with wind and turns, beside GeographicLib's plain direct calls for the same
// legs, which any tool must make at least to know where they end; and the small patterns of an
// optimiser's inner loop.
#include <benchmark/benchmark.h>

#include <GeographicLib/Geodesic.hpp>

#include "sweepwright/flight/flown_path.hpp"
#include "sweepwright/pattern/parallel_track.hpp"

namespace {

using namespace sweepwright;
using namespace sweepwright::flight;

/// `rows` search legs and the cross legs between them.
pattern::Pattern ladder(int rows, double spacing_nm) {
  return pattern::make_parallel_track(
      {Position::at(Angle::degrees(38), Angle::degrees(-117)), TrueDirection::degrees(33),
       Length::nautical_miles(20), Length::nautical_miles(spacing_nm), rows, pattern::Turn::right});
}

const Aircraft kAircraft{
    .true_airspeed = Speed::knots(90), .transit_airspeed = {}, .fuel_flow = {}};

WindField breeze() {
  return WindField::uniform({TrueDirection::degrees(310), Speed::knots(20)});
}

void fly_rows(benchmark::State& state, int rows, double spacing_nm, bool magnetic) {
  const pattern::Pattern pattern = ladder(rows, spacing_nm);
  const WindField wind = breeze();
  const FlyOptions options{.depart = TimePoint(std::chrono::hours(24 * 365 * 56)),
                           .magnetic_headings = magnetic};
  for (auto _ : state) benchmark::DoNotOptimize(fly(pattern, kAircraft, wind, options));
  state.SetItemsProcessed(state.iterations());
}

/// One direct call a leg.
void DirectCalls199Legs(benchmark::State& state) {
  const pattern::Pattern pattern = ladder(100, 1.5);
  const GeographicLib::Geodesic& earth = GeographicLib::Geodesic::WGS84();
  for (auto _ : state) {
    double sum = 0;
    for (const pattern::Leg& leg : pattern.legs) {
      double latitude = 0;
      double longitude = 0;
      double track = 0;
      earth.Direct(leg.from.latitude().degrees(), leg.from.longitude().degrees(),
                   leg.line.start_track.degrees(), leg.line.length.metres(), latitude, longitude,
                   track);
      sum += latitude + longitude + track;
    }
    benchmark::DoNotOptimize(sum);
  }
  state.SetItemsProcessed(state.iterations());
}

void Flown199Legs(benchmark::State& state) {
  fly_rows(state, 100, 1.5, false);
}
void Flown199LegsWithMagneticHeadings(benchmark::State& state) {
  fly_rows(state, 100, 1.5, true);
}
void Flown199LegsWithPath(benchmark::State& state) {
  const pattern::Pattern pattern = ladder(100, 1.5);
  const WindField wind = breeze();
  for (auto _ : state) {
    benchmark::DoNotOptimize(
        flown_paths(fly(pattern, kAircraft, wind, {.magnetic_headings = false})));
  }
}
/// Spacing under the turn's diameter: teardrops, and other orders of rows tried.
void Flown39LegsCloseRows(benchmark::State& state) {
  fly_rows(state, 20, 0.5, false);
}
/// An ordinary pattern, as an optimiser tries them: items are patterns.
void Flown19Legs(benchmark::State& state) {
  fly_rows(state, 10, 1.5, false);
}

BENCHMARK(DirectCalls199Legs)->Unit(benchmark::kMicrosecond);
BENCHMARK(Flown199Legs)->Unit(benchmark::kMicrosecond);
BENCHMARK(Flown199LegsWithMagneticHeadings)->Unit(benchmark::kMicrosecond);
BENCHMARK(Flown199LegsWithPath)->Unit(benchmark::kMicrosecond);
BENCHMARK(Flown39LegsCloseRows)->Unit(benchmark::kMicrosecond);
BENCHMARK(Flown19Legs)->Unit(benchmark::kMicrosecond);

}  // namespace
