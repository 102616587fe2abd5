// Terrain under a search pattern of 1,000 NM, on a 3 arc-second model that is already loaded: ours
// beside brute force over all posts in each leg's box, and beside gdallocationinfo (Debian package
// gdal-bin, process start included) that samples the line once for each post, which misses what
// stands beside the line. All are asked for the highest ground.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "sweepwright/hazard/terrain_check.hpp"
#include "sweepwright/hazard/terrain_findings.hpp"
#include "sweepwright/hazard/turning_room.hpp"
#include "sweepwright/pattern/parallel_track.hpp"
#include "sweepwright/position/local_plane.hpp"
#include "sweepwright/terrain/corridor.hpp"

namespace {

using namespace sweepwright;

constexpr double kStep = 1.0 / 1200;
constexpr int kSide = 1201;
constexpr Length kHalfWidth = Length::nautical_miles(0.5);

double ground(double latitude, double longitude) {
  return std::round(1500 + 700 * std::sin(61 * longitude) * std::cos(47 * latitude) +
                    400 * std::sin(113 * longitude + 89 * latitude));
}

terrain::ElevationTile tile(int south, int west) {
  terrain::ElevationTile made;
  made.lattice = terrain::GeographicLattice{Angle::degrees(south + 1), Angle::degrees(west),
                                            Angle::degrees(kStep), Angle::degrees(kStep)};
  made.rows = made.columns = kSide;
  for (int row = 0; row < kSide; ++row) {
    for (int column = 0; column < kSide; ++column) {
      made.heights_m.push_back(
          static_cast<float>(ground(south + 1 - row * kStep, west + column * kStep)));
    }
  }
  return made;
}

const terrain::ElevationModel& model() {
  static const terrain::ElevationModel made({tile(37, -106), tile(37, -105)});
  return made;
}

/// Legs of 24.5 NM on 045T and back, 1 NM apart: 1,000 NM with the cross legs.
const Path& pattern_path() {
  static const Path path = [] {
    Path legs;
    Position start = Position::at(Angle::degrees(37.45), Angle::degrees(-105.8));
    const TrueDirection track = TrueDirection::degrees(45);
    for (int leg = 0; leg < 39; ++leg) {
      const Position end = travel(start, track, Length::nautical_miles(24.66)).position;
      legs.push_back(leg % 2 == 0 ? start : end);
      legs.push_back(leg % 2 == 0 ? end : start);
      start = travel(start, TrueDirection::degrees(100), Length::nautical_miles(1)).position;
    }
    return legs;
  }();
  return path;
}

double our_highest() {
  terrain::CorridorOptions options;
  options.half_width = kHalfWidth;
  return highest(make_corridor(model(), pattern_path(), options))->height.metres();
}

/// Every post in the box round each leg's corridor, by its distance from the leg on a plane.
double brute_highest() {
  double top = -1e9;
  const Path& path = pattern_path();
  for (std::size_t leg = 0; leg + 1 < path.size(); ++leg) {
    const Position a = path[leg];
    const Position b = path[leg + 1];
    const double latitude = (a.latitude() + b.latitude()).degrees() / 2;
    const double y_metres = 111'000;
    const double x_metres = 111'320 * std::cos(latitude / kDegreesPerRadian);
    const double bx = (b.longitude() - a.longitude()).degrees() * x_metres;
    const double by = (b.latitude() - a.latitude()).degrees() * y_metres;
    const double reach = kHalfWidth.metres() * 1.01;
    const auto least_most = [](double p, double q, double more) {
      return std::pair{std::min(p, q) - more, std::max(p, q) + more};
    };
    const auto [south, north] =
        least_most(a.latitude().degrees(), b.latitude().degrees(), reach / y_metres);
    const auto [west, east] =
        least_most(a.longitude().degrees(), b.longitude().degrees(), reach / x_metres);
    for (const terrain::ElevationTile& tile : model().tiles()) {
      const auto& lattice = std::get<terrain::GeographicLattice>(tile.lattice);
      const auto index = [](double value) {
        return std::clamp(static_cast<int>(std::lround(value / kStep)), 0, kSide - 1);
      };
      for (int row = index(lattice.north.degrees() - north);
           row <= index(lattice.north.degrees() - south); ++row) {
        for (int column = index(west - lattice.west.degrees());
             column <= index(east - lattice.west.degrees()); ++column) {
          const double x =
              (lattice.west.degrees() + column * kStep - a.longitude().degrees()) * x_metres;
          const double y =
              (lattice.north.degrees() - row * kStep - a.latitude().degrees()) * y_metres;
          const double share = std::clamp((x * bx + y * by) / (bx * bx + by * by), 0.0, 1.0);
          if (std::hypot(x - share * bx, y - share * by) > reach) continue;
          top = std::max(top, static_cast<double>(tile.heights_m[tile.index(row, column)]));
        }
      }
    }
  }
  return top;
}

void bench_ours(benchmark::State& state) {
  // A cell that is only touched counts with all its posts: ours may be higher, never lower.
  if (our_highest() < brute_highest()) state.SkipWithError("a summit was missed");
  for (auto _ : state) benchmark::DoNotOptimize(our_highest());
  state.counters["NM"] = length(pattern_path()).nautical_miles();
}
BENCHMARK(bench_ours)->Name("highest ground along 1,000 NM, ours")->Unit(benchmark::kMillisecond);

/// A parallel track search of 1,000 NM as it is flown in a wind, turns included: what a plan
/// checks.
const flight::FlownPattern& flight_of_the_pattern() {
  static const flight::FlownPattern flown = [] {
    const pattern::Pattern ladder = pattern::make_parallel_track(
        {Position::at(Angle::degrees(37.5), Angle::degrees(-105.0)), TrueDirection::degrees(45),
         Length::nautical_miles(24.66), Length::nautical_miles(1), 39, pattern::Turn::right});
    flight::FlyOptions options;
    options.magnetic_headings = false;
    options.order = flight::RowOrder::drawn;
    return flight::fly(
        ladder, {.true_airspeed = Speed::knots(90), .transit_airspeed = {}, .fuel_flow = {}},
        flight::WindField::uniform({TrueDirection::degrees(250), Speed::knots(20)}), options);
  }();
  return flown;
}

void bench_flight(benchmark::State& state) {
  hazard::TerrainTask task;
  task.half_width = kHalfWidth;
  task.search_height = Length::feet(1000);
  task.aircraft = {.true_airspeed = Speed::knots(90), .transit_airspeed = {}, .fuel_flow = {}};
  const flight::FlownPattern& flown = flight_of_the_pattern();
  for (auto _ : state) {
    benchmark::DoNotOptimize(hazard::check_terrain(model(), flown, task));
  }
  state.counters["NM"] = flown.total_distance.nautical_miles();
}
BENCHMARK(bench_flight)
    ->Name("every leg of 1,000 NM as flown, turns included: clearance and heights to fly")
    ->Unit(benchmark::kMillisecond);

void bench_flight_findings(benchmark::State& state) {
  hazard::TerrainTask task;
  task.half_width = kHalfWidth;
  task.search_height = Length::feet(1000);
  task.aircraft = {.true_airspeed = Speed::knots(90), .transit_airspeed = {}, .fuel_flow = {}};
  const flight::FlownPattern& flown = flight_of_the_pattern();
  const hazard::TerrainCheck check = hazard::check_terrain(model(), flown, task);
  for (auto _ : state) {
    benchmark::DoNotOptimize(hazard::terrain_findings(model(), flown, check, {"A", "A1"}));
    benchmark::DoNotOptimize(hazard::turning_room_findings(model(), flown, check, {"A", "A1"}));
  }
}
BENCHMARK(bench_flight_findings)
    ->Name("ground ahead and turning room on 1,000 NM as flown")
    ->Unit(benchmark::kMillisecond);

void bench_brute(benchmark::State& state) {
  brute_highest();
  for (auto _ : state) benchmark::DoNotOptimize(brute_highest());
}
BENCHMARK(bench_brute)
    ->Name("highest ground along 1,000 NM, every post of each leg's box")
    ->Unit(benchmark::kMillisecond);

/// The tiles as .hgt files, a mosaic of them, and a file of places along the line.
class GdalFiles {
 public:
  GdalFiles() : folder_(std::filesystem::temp_directory_path() / "sweepwright-bench-terrain") {
    std::filesystem::create_directories(folder_);
    for (const terrain::ElevationTile& tile : model().tiles()) {
      const auto& lattice = std::get<terrain::GeographicLattice>(tile.lattice);
      char name[32];
      std::snprintf(name, sizeof name, "N37W%03d.hgt", static_cast<int>(-lattice.west.degrees()));
      std::ofstream file(folder_ / name, std::ios::binary);
      for (const float height : tile.heights_m) {
        const int metres = static_cast<int>(height);
        file.put(static_cast<char>(metres >> 8)).put(static_cast<char>(metres & 0xFF));
      }
    }
    std::ofstream places(folder_ / "places.txt");
    for (std::size_t i = 0; i + 1 < pattern_path().size(); ++i) {
      const GeodesicLine leg = geodesic(pattern_path()[i], pattern_path()[i + 1]);
      for (Length at; at < leg.length; at += Length::metres(92.6)) {
        const Position place = travel(pattern_path()[i], leg.start_track, at).position;
        places << place.longitude().degrees() << ' ' << place.latitude().degrees() << '\n';
      }
    }
    ready_ = run("gdalbuildvrt -q all.vrt N37W106.hgt N37W105.hgt") == 0;
  }
  ~GdalFiles() { std::filesystem::remove_all(folder_); }
  GdalFiles(const GdalFiles&) = delete;
  GdalFiles& operator=(const GdalFiles&) = delete;

  bool ready() const { return ready_; }
  int run(const std::string& command) const {
    return std::system(("cd '" + folder_.string() + "' && " + command).c_str());
  }

 private:
  std::filesystem::path folder_;
  bool ready_ = false;
};

void bench_gdal(benchmark::State& state) {
  const GdalFiles files;
  if (!files.ready()) {
    state.SkipWithError("gdalbuildvrt failed (Debian package gdal-bin)");
    return;
  }
  for (auto _ : state) {
    if (files.run("gdallocationinfo -valonly -wgs84 all.vrt < places.txt > heights.txt") != 0) {
      state.SkipWithError("gdallocationinfo failed");
      return;
    }
  }
}
BENCHMARK(bench_gdal)
    ->Name("heights along 1,000 NM, the line only, gdallocationinfo")
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

}  // namespace
