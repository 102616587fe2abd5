// Naming positions: ours beside GeographicLib's encoder, the general-purpose choice, on the same
// places.
#include <benchmark/benchmark.h>

#include <GeographicLib/GARS.hpp>
#include <random>
#include <string>
#include <vector>

#include "sweepwright/grid/systems.hpp"

namespace {

using sweepwright::Angle;
using sweepwright::Position;

constexpr std::size_t kPlaces = 4096;

const std::vector<Position>& places() {
  static const std::vector<Position> all = [] {
    std::mt19937_64 random(1);
    std::uniform_real_distribution<double> latitude(-90, 90);
    std::uniform_real_distribution<double> longitude(-180, 180);
    std::vector<Position> made;
    for (int i = 0; i < static_cast<int>(kPlaces); ++i) {
      made.push_back(
          Position::at(Angle::degrees(latitude(random)), Angle::degrees(longitude(random))));
    }
    return made;
  }();
  return all;
}

/// Counts each name, and stops when ours and the library's differ.
bool names_agree() {
  const sweepwright::grid::Grid& gars = sweepwright::grid::grid("gars");
  for (const Position& place : places()) {
    std::string theirs;
    GeographicLib::GARS::Forward(place.latitude().degrees(), place.longitude().degrees(), 2,
                                 theirs);
    if (theirs != gars.name_of(place, gars.level("5min"))) return false;
  }
  return true;
}

void name_in(benchmark::State& state, std::string_view system, std::string_view level_name) {
  if (!names_agree()) state.SkipWithError("names differ from GeographicLib's");
  const sweepwright::grid::Grid& grid = sweepwright::grid::grid(system);
  const sweepwright::grid::Level level = grid.level(level_name);
  const std::vector<Position>& all = places();
  std::size_t i = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(grid.name_of(all[i++ % kPlaces], level));
  }
}

void GarsByGeographicLib(benchmark::State& state) {
  const std::vector<Position>& all = places();
  std::size_t i = 0;
  std::string name;
  for (auto _ : state) {
    const Position& place = all[i++ % kPlaces];
    GeographicLib::GARS::Forward(place.latitude().degrees(), place.longitude().degrees(), 2, name);
    benchmark::DoNotOptimize(name);
  }
}

void Gars(benchmark::State& state) {
  name_in(state, "gars", "5min");
}
void Quarter(benchmark::State& state) {
  name_in(state, "quarter", "3.75min");
}

BENCHMARK(GarsByGeographicLib);
BENCHMARK(Gars);
BENCHMARK(Quarter);

}  // namespace
