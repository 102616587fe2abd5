// The optimal spread of effort over a million cells: ours beside numpy, the general-purpose choice,
// sorting and with Newton's method, on the same cells in the same run. The probabilities of success
// must agree. Memory of ours: see optimal.hpp.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdio>
#include <sstream>
#include <string>
#include <vector>

#include "sweepwright/effort/optimal.hpp"

namespace {

using sweepwright::Area;
namespace effort = sweepwright::effort;

constexpr int kSide = 1000;
constexpr double kReach = 5;     // deviations to each side
constexpr double kFewHours = 5;  // effort in squares of the deviation: 8 percent of the cells
constexpr double kMuch = 500;    // nearly all cells
constexpr double kSamePos = 1e-9;

/// A circular normal; the deviation is the unit of length.
struct Belief {
  std::vector<double> probabilities;
  std::vector<Area> areas;
};

const Belief& belief() {
  static const Belief made = [] {
    std::vector<double> strip;
    const double step = 2 * kReach / kSide;
    for (int i = 0; i < kSide; ++i) {
      const double low = -kReach + i * step;
      strip.push_back((std::erf((low + step) / std::sqrt(2.0)) - std::erf(low / std::sqrt(2.0))) /
                      2);
    }
    Belief belief;
    for (const double row : strip) {
      for (const double column : strip) belief.probabilities.push_back(row * column);
    }
    belief.areas.assign(belief.probabilities.size(), Area::square_metres(step * step));
    return belief;
  }();
  return made;
}

// Times are the best of nine. Prints for each effort: milliseconds by sorting, by Newton's method,
// and both probabilities of success.
constexpr const char* kNumpy = R"(
import time, math
import numpy as np
side, reach = 1000, 5.0
edges = np.linspace(-reach, reach, side + 1)
cdf = np.array([0.5 * math.erf(x / math.sqrt(2)) for x in edges])
strip = np.diff(cdf)
p = np.outer(strip, strip).ravel()
a = np.full(p.size, (2 * reach / side) ** 2)
def by_sort(effort):
    d = p / a
    order = np.argsort(d)[::-1]
    l = np.log(d[order])
    area = a[order]
    worth = np.cumsum(area * l)
    total = np.cumsum(area)
    n = np.searchsorted(worth - total * l, effort)
    u = (worth[n - 1] - effort) / total[n - 1]
    c = np.zeros(p.size)
    c[order[:n]] = l[:n] - u
    return c
def by_newton(effort):
    l = np.log(p / a)
    keep_l, keep_a = l, a
    while True:
        u = (np.dot(keep_a, keep_l) - effort) / keep_a.sum()
        above = keep_l > u
        if above.all():
            break
        keep_l, keep_a = keep_l[above], keep_a[above]
    return np.maximum(l - u, 0)
def best(f, effort):
    times = []
    for _ in range(9):
        start = time.perf_counter()
        f(effort)
        times.append(time.perf_counter() - start)
    return 1000 * min(times)
pos = lambda c: -np.dot(p, np.expm1(-c))
for z in (5.0, 500.0):
    print(best(by_sort, z), best(by_newton, z), repr(pos(by_sort(z))), repr(pos(by_newton(z))))
)";

struct Numpy {
  double sort_ms = 0;
  double newton_ms = 0;
  double sort_pos = 0;
  double newton_pos = 0;
};

/// For kFewHours and kMuch; empty when numpy did not run.
const std::vector<Numpy>& numpy() {
  static const std::vector<Numpy> results = [] {
    std::vector<Numpy> all;
    const std::string command = std::string("/usr/bin/python3 -c '") + kNumpy + "'";
    std::FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) return all;
    char line[256] = {};
    while (std::fgets(line, sizeof line, pipe) != nullptr) {
      std::istringstream in(line);
      Numpy one;
      if (in >> one.sort_ms >> one.newton_ms >> one.sort_pos >> one.newton_pos) all.push_back(one);
    }
    if (pclose(pipe) != 0 || all.size() != 2) all.clear();
    return all;
  }();
  return results;
}

effort::Allocation allocate(double squares) {
  return effort::optimal_allocation({belief().probabilities, belief().areas},
                                    Area::square_metres(squares));
}

void allocate(benchmark::State& state, double squares) {
  const double q = std::sqrt(squares / std::acos(-1.0));
  const double closed_form = 1 - (1 + q) * std::exp(-q);  // Koopman
  if (std::abs(allocate(squares).pos.value() / closed_form - 1) > 1e-3) {
    state.SkipWithError("not the closed form");
  }
  for (auto _ : state) benchmark::DoNotOptimize(allocate(squares).coverages.data());
}

void by_numpy(benchmark::State& state, std::size_t run, double squares, bool sorting) {
  double ms = 0;
  if (numpy().empty()) {
    state.SkipWithError("numpy did not run: python3-numpy is needed");
  } else {
    const Numpy& one = numpy()[run];
    ms = sorting ? one.sort_ms : one.newton_ms;
    const double pos = sorting ? one.sort_pos : one.newton_pos;
    if (std::abs(pos - allocate(squares).pos.value()) > kSamePos) {
      state.SkipWithError("numpy finds another optimum");
    }
  }
  for (auto _ : state) state.SetIterationTime(ms / 1000);
}

void AllocateFewHours(benchmark::State& state) {
  allocate(state, kFewHours);
}
void AllocateFewHoursByNumpyNewton(benchmark::State& state) {
  by_numpy(state, 0, kFewHours, false);
}
void AllocateFewHoursByNumpySort(benchmark::State& state) {
  by_numpy(state, 0, kFewHours, true);
}
void AllocateMuch(benchmark::State& state) {
  allocate(state, kMuch);
}
void AllocateMuchByNumpyNewton(benchmark::State& state) {
  by_numpy(state, 1, kMuch, false);
}
void AllocateMuchByNumpySort(benchmark::State& state) {
  by_numpy(state, 1, kMuch, true);
}
void EffortForPos(benchmark::State& state) {
  const sweepwright::sweep::Probability wanted(0.5);
  for (auto _ : state) {
    benchmark::DoNotOptimize(effort::effort_for({belief().probabilities, belief().areas}, wanted));
  }
}

void milliseconds(benchmark::internal::Benchmark* benchmark) {
  benchmark->Unit(benchmark::kMillisecond);
}
/// The time was taken by numpy's own program.
void told(benchmark::internal::Benchmark* benchmark) {
  benchmark->Unit(benchmark::kMillisecond)->UseManualTime()->Iterations(1);
}
BENCHMARK(AllocateFewHours)->Apply(milliseconds);
BENCHMARK(AllocateFewHoursByNumpyNewton)->Apply(told);
BENCHMARK(AllocateFewHoursByNumpySort)->Apply(told);
BENCHMARK(AllocateMuch)->Apply(milliseconds);
BENCHMARK(AllocateMuchByNumpyNewton)->Apply(told);
BENCHMARK(AllocateMuchByNumpySort)->Apply(told);
BENCHMARK(EffortForPos)->Apply(milliseconds);

}  // namespace
