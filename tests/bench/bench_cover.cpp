// Cells of an area: a star of 5,000 corners over 1' cells, ours beside GEOS with a prepared
// polygon, the general-purpose choice. Both count the cells that share ground with the area.
#include <benchmark/benchmark.h>
#include <geos_c.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "sweepwright/grid/systems.hpp"
#include "sweepwright/position/plotting.hpp"

namespace {

using namespace sweepwright;

constexpr int kCorners = 5000;

/// Round 45 N 7 E, 2 to 3 degrees from its middle.
const Region& star() {
  static const Region region = [] {
    Ring ring;
    for (int i = 0; i < kCorners; ++i) {
      const double angle = 2 * std::numbers::pi * i / kCorners;
      const double radius = 2.5 + 0.5 * std::sin(37 * angle);
      ring.push_back(Position::at(Angle::degrees(45 + radius * std::sin(angle)),
                                  Angle::degrees(7 + radius * std::cos(angle))));
    }
    return make_region({{ring, {}}});
  }();
  return region;
}

std::size_t our_count() {
  const grid::Grid& grid = grid::grid("georef");
  std::size_t cells = 0;
  grid.visit(star(), grid.level("1min"), grid::Selection::touching,
             [&](const grid::Cell&) { ++cells; });
  return cells;
}

std::size_t geos_count() {
  GEOSContextHandle_t geos = GEOS_init_r();
  const PlotLine line = plotted(star()).front().outer;
  GEOSCoordSequence* corners = GEOSCoordSeq_create_r(geos, static_cast<unsigned>(line.size()), 2);
  for (unsigned i = 0; i < line.size(); ++i) {
    GEOSCoordSeq_setXY_r(geos, corners, i, line[i].longitude.degrees(), line[i].latitude.degrees());
  }
  GEOSGeometry* polygon =
      GEOSGeom_createPolygon_r(geos, GEOSGeom_createLinearRing_r(geos, corners), nullptr, 0);
  const GEOSPreparedGeometry* prepared = GEOSPrepare_r(geos, polygon);
  std::size_t cells = 0;
  for (int row = 0; row < 360; ++row) {
    for (int column = 0; column < 360; ++column) {
      const double south = 42 + row / 60.0;
      const double west = 4 + column / 60.0;
      GEOSGeometry* cell =
          GEOSGeom_createRectangle_r(geos, west, south, west + 1 / 60.0, south + 1 / 60.0);
      // A cell inside needs no further question; one on the edge must share ground.
      if (GEOSPreparedContains_r(geos, prepared, cell) == 1) {
        ++cells;
      } else if (GEOSPreparedIntersects_r(geos, prepared, cell) == 1) {
        GEOSGeometry* common =
            GEOSClipByRect_r(geos, polygon, west, south, west + 1 / 60.0, south + 1 / 60.0);
        double area = 0;
        GEOSArea_r(geos, common, &area);
        cells += area > 0 ? 1 : 0;
        GEOSGeom_destroy_r(geos, common);
      }
      GEOSGeom_destroy_r(geos, cell);
    }
  }
  GEOSPreparedGeom_destroy_r(geos, prepared);
  GEOSGeom_destroy_r(geos, polygon);
  GEOS_finish_r(geos);
  return cells;
}

void Cover(benchmark::State& state) {
  for (auto _ : state) state.counters["cells"] = static_cast<double>(our_count());
}
void CoverByGeos(benchmark::State& state) {
  for (auto _ : state) state.counters["cells"] = static_cast<double>(geos_count());
}
BENCHMARK(Cover)->Unit(benchmark::kMillisecond);
BENCHMARK(CoverByGeos)->Unit(benchmark::kMillisecond);

}  // namespace
