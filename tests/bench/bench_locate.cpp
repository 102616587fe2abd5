// Reading a position and writing it in MGRS: ours, which asks every notation and lists all
// readings, beside GeographicLib's GeoCoords, the general-purpose choice, which knows three of
// them.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <GeographicLib/GeoCoords.hpp>
#include <random>
#include <string>
#include <vector>

#include "sweepwright/locate/notations.hpp"
#include "sweepwright/locate/read_position.hpp"

namespace {

using namespace sweepwright;

constexpr std::size_t kPlaces = 4096;

/// In a form that both read: `38d15.00N 117d02.50W`.
const std::vector<std::string>& texts() {
  static const std::vector<std::string> all = [] {
    std::mt19937_64 random(1);
    std::uniform_real_distribution<double> minutes(0, 59.9);
    std::uniform_int_distribution<int> latitude(0, 78);
    std::uniform_int_distribution<int> longitude(0, 179);
    std::vector<std::string> made;
    for (std::size_t i = 0; i < kPlaces; ++i) {
      made.push_back(fmt::format("{:02}d{:05.2f}{} {:03}d{:05.2f}{}", latitude(random),
                                 minutes(random), random() % 2 ? 'N' : 'S', longitude(random),
                                 minutes(random), random() % 2 ? 'E' : 'W'));
    }
    return made;
  }();
  return all;
}

std::string ours(const std::string& text) {
  return locate::format_notation("mgrs", locate::read_position(text).position);
}
std::string theirs(const std::string& text) {
  return GeographicLib::GeoCoords(text).MGRSRepresentation(0);
}

bool names_agree() {
  for (const std::string& text : texts()) {
    if (ours(text) != theirs(text)) return false;
  }
  return true;
}

void ReadAndWriteMgrs(benchmark::State& state) {
  if (!names_agree()) state.SkipWithError("names differ from GeographicLib's");
  std::size_t i = 0;
  for (auto _ : state) benchmark::DoNotOptimize(ours(texts()[i++ % kPlaces]));
}
void ReadAndWriteMgrsByGeographicLib(benchmark::State& state) {
  std::size_t i = 0;
  for (auto _ : state) benchmark::DoNotOptimize(theirs(texts()[i++ % kPlaces]));
}
BENCHMARK(ReadAndWriteMgrs);
BENCHMARK(ReadAndWriteMgrsByGeographicLib);

}  // namespace
