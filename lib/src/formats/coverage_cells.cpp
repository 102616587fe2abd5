#include "formats/coverage_cells.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace sweepwright::formats {
namespace {

double rounded(double value, double units) {
  return std::round(value * units) / units;
}

std::string size_text(Length cell) {
  return fmt::format("{:g}m", rounded(cell.metres(), 10));
}

}  // namespace

std::size_t coverage_cell_count(const CoverageReport& report) {
  return report.named.empty() ? report.inside.size() : report.named.size();
}

void visit_coverage_cells(const CoverageReport& report,
                          const std::function<void(const CoverageCell&)>& sink) {
  for (const debrief::GridCellCoverage& one : report.named) {
    sink({one.cell.name, std::string(one.cell.system), std::string(one.cell.level.name),
          one.figures, one.cell.box ? Geometry(*one.cell.box) : Geometry(one.cell.region)});
  }
  if (!report.named.empty()) return;
  const debrief::CoverageFrame& frame = report.map.frame;
  const std::string level = size_text(frame.cell);
  for (const std::size_t cell : report.inside) {
    const std::array<std::size_t, 1> one{cell};
    sink({fmt::format("{}/{}", cell % frame.columns, cell / frame.columns), "raster", level,
          debrief::coverage_figures(report.map, one, report.law).value(),
          debrief::cell_outline(frame, cell)});
  }
}

std::vector<Property> figure_properties(const debrief::CoverageFigures& figures) {
  constexpr double kProbability = 1e5;
  return {{"pod", rounded(figures.pod, kProbability)},
          {"coverage", rounded(figures.coverage, 1e4)},
          {"passes", rounded(figures.passes, 1e3)},
          {"nearest_m", figures.nearest ? PropertyValue(rounded(figures.nearest->metres(), 10))
                                        : PropertyValue()},
          {"swept_share", rounded(figures.swept_share, 1e4)},
          {"effort_m2", std::round(figures.effort.square_metres())},
          {"area_m2", std::round(figures.area.square_metres())}};
}

const std::vector<PodClass>& pod_classes() {
  static const std::vector<PodClass> classes{{0.9, "POD 90 % or more"}, {0.75, "75 to 90 %"},
                                             {0.5, "50 to 75 %"},       {0.25, "25 to 50 %"},
                                             {0.1, "10 to 25 %"},       {0, "under 10 %"}};
  return classes;
}

std::size_t pod_class_of(double pod) {
  const auto& classes = pod_classes();
  const auto found =
      std::ranges::find_if(classes, [&](const PodClass& one) { return pod >= one.least; });
  return std::min(static_cast<std::size_t>(found - classes.begin()), classes.size() - 1);
}

}  // namespace sweepwright::formats
