// Coverage along tracks as flown: 20 tracks of 10,000 places, sweep width 1 NM, 40 x 40 NM in cells
// of 100 m. Passes and nearest distances stand beside what a user of a general-purpose library does
// for the swept ground alone: GEOS buffers and their union. The detection integral stands beside
// the plain loop over all cells and pieces, on a smaller case that the loop can do.
#include <benchmark/benchmark.h>
#include <geos_c.h>

#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "sweepwright/debrief/coverage_map.hpp"

namespace {

using namespace sweepwright;
using debrief::CoverageAccumulator;
using debrief::CoverageFrame;
using debrief::CoverageParts;
using debrief::PlanePiece;

constexpr Length kSweepWidth = Length::nautical_miles(1);
constexpr Length kCell = Length::metres(100);

struct Problem {
  CoverageFrame frame;
  std::vector<std::vector<PlanePoint>> tracks;
};

/// Tracks that wander about a square, a fix every 46 m (90 kt, 1 s), and turn back at its sides.
Problem make_problem(Length side, int tracks, int places) {
  const auto across = static_cast<std::size_t>(std::ceil(side / kCell));
  Problem problem{{LocalPlane(Position::at(Angle::degrees(38), Angle::degrees(-117))),
                   {-side / 2, -side / 2},
                   kCell,
                   across,
                   across},
                  {}};
  std::mt19937 random(7);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
  };
  const double half = side.metres() / 2;
  for (int t = 0; t < tracks; ++t) {
    double x = uniform(-half, half);
    double y = uniform(-half, half);
    double heading = uniform(0, 2 * std::numbers::pi);
    problem.tracks.emplace_back();
    for (int i = 0; i < places; ++i) {
      problem.tracks.back().push_back({Length::metres(x), Length::metres(y)});
      heading += uniform(-0.02, 0.02);
      const bool leaves_side = std::abs(x + 46 * std::sin(heading)) > half;
      const bool leaves_end = std::abs(y + 46 * std::cos(heading)) > half;
      if (leaves_side) heading = -heading;
      if (leaves_end) heading = std::numbers::pi - heading;
      x += 46 * std::sin(heading);
      y += 46 * std::cos(heading);
    }
  }
  return problem;
}

const Problem& whole_problem() {
  static const Problem problem = make_problem(Length::nautical_miles(40), 20, 10'000);
  return problem;
}
const Problem& small_problem() {
  static const Problem problem = make_problem(Length::nautical_miles(10), 1, 5'000);
  return problem;
}

debrief::CoverageMap coverage_of(const Problem& problem, unsigned threads, CoverageParts parts) {
  CoverageAccumulator coverage(problem.frame, threads, parts);
  for (const auto& track : problem.tracks) {
    for (std::size_t i = 1; i < track.size(); ++i) {
      coverage.add(PlanePiece{track[i - 1], track[i], kSweepWidth});
    }
  }
  return coverage.map();
}

double swept_square_kilometres(const debrief::CoverageMap& map) {
  double cells = 0;
  for (const auto passes : map.passes) cells += passes > 0 ? 1 : 0;
  return cells * map.frame.cell_area().square_kilometres();
}

void PassesAndNearest(benchmark::State& state) {
  for (auto _ : state) {
    const auto map = coverage_of(whole_problem(), static_cast<unsigned>(state.range(0)),
                                 {.passes = true, .swept = false, .detection = false});
    state.counters["swept_km2"] = swept_square_kilometres(map);
  }
}

void SweptByGeosBuffersAndUnion(benchmark::State& state) {
  for (auto _ : state) {
    GEOSContextHandle_t geos = GEOS_init_r();
    std::vector<GEOSGeometry*> buffers;
    for (const auto& track : whole_problem().tracks) {
      GEOSCoordSequence* places =
          GEOSCoordSeq_create_r(geos, static_cast<unsigned>(track.size()), 2);
      for (unsigned i = 0; i < track.size(); ++i) {
        GEOSCoordSeq_setXY_r(geos, places, i, track[i].right.metres(), track[i].up.metres());
      }
      GEOSGeometry* line = GEOSGeom_createLineString_r(geos, places);
      buffers.push_back(GEOSBuffer_r(geos, line, kSweepWidth.metres() / 2, 8));
      GEOSGeom_destroy_r(geos, line);
    }
    GEOSGeometry* all = GEOSGeom_createCollection_r(geos, GEOS_GEOMETRYCOLLECTION, buffers.data(),
                                                    static_cast<unsigned>(buffers.size()));
    GEOSGeometry* swept = GEOSUnaryUnion_r(geos, all);
    const double half = whole_problem().frame.cell.metres() *
                        static_cast<double>(whole_problem().frame.columns) / 2;
    GEOSGeometry* inside = GEOSClipByRect_r(geos, swept, -half, -half, half, half);
    double area = 0;
    GEOSArea_r(geos, inside, &area);
    state.counters["swept_km2"] = area / 1e6;
    GEOSGeom_destroy_r(geos, inside);
    GEOSGeom_destroy_r(geos, swept);
    GEOSGeom_destroy_r(geos, all);
    GEOS_finish_r(geos);
  }
}

void SweptShareAndEffort(benchmark::State& state) {
  for (auto _ : state) {
    const auto map = coverage_of(whole_problem(), static_cast<unsigned>(state.range(0)),
                                 {.passes = false, .swept = true, .detection = false});
    double cells = 0;
    for (const float share : map.swept_share) cells += static_cast<double>(share);
    state.counters["swept_km2"] = cells * map.frame.cell_area().square_kilometres();
  }
}

double mean_pod(const std::vector<double>& potential) {
  double sum = 0;
  for (const double one : potential) sum -= std::expm1(-one);
  return sum / static_cast<double>(potential.size());
}

constexpr CoverageParts kDetection{.passes = false, .swept = false, .detection = true};

void DetectionWhole(benchmark::State& state) {
  for (auto _ : state) {
    const auto map =
        coverage_of(whole_problem(), static_cast<unsigned>(state.range(0)), kDetection);
    state.counters["mean_pod"] = mean_pod(map.potential);
  }
}

void Detection(benchmark::State& state) {
  for (auto _ : state) {
    state.counters["mean_pod"] = mean_pod(coverage_of(small_problem(), 1, kDetection).potential);
  }
}

/// The closed form with the distance to the line, as one writes it down.
void DetectionByPlainLoop(benchmark::State& state) {
  const Problem& problem = small_problem();
  const std::vector<PlanePoint>& track = problem.tracks.front();
  const double strength = kSweepWidth.metres() * kSweepWidth.metres() / (8 * std::numbers::pi);
  for (auto _ : state) {
    std::vector<double> potential(problem.frame.cells());
    for (std::size_t cell = 0; cell < potential.size(); ++cell) {
      const double px = problem.frame.corner.right.metres() +
                        100 * (static_cast<double>(cell % problem.frame.columns) + 0.5);
      const double py = problem.frame.corner.up.metres() +
                        100 * (static_cast<double>(cell / problem.frame.columns) + 0.5);
      double sum = 0;
      for (std::size_t i = 1; i < track.size(); ++i) {
        const double ax = track[i - 1].right.metres() - px;
        const double ay = track[i - 1].up.metres() - py;
        const double bx = track[i].right.metres() - px;
        const double by = track[i].up.metres() - py;
        const double a = std::sqrt(ax * ax + ay * ay);
        const double b = std::sqrt(bx * bx + by * by);
        const double length = std::sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
        sum += length * (a + b) / (a * b * (a * b + ax * bx + ay * by));
      }
      potential[cell] = strength * sum;
    }
    state.counters["mean_pod"] = mean_pod(potential);
  }
}

BENCHMARK(PassesAndNearest)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(SweptByGeosBuffersAndUnion)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(SweptShareAndEffort)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(DetectionWhole)->Arg(1)->Arg(2)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(Detection)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(DetectionByPlainLoop)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
