// The cells of a coverage report, named or of the raster, one way; private to the formats room.
#pragma once

#include <functional>
#include <string>

#include "sweepwright/formats/coverage_writer.hpp"
#include "sweepwright/formats/geometry.hpp"
#include "sweepwright/formats/property.hpp"

namespace sweepwright::formats {

struct CoverageCell {
  std::string name;
  std::string system;
  std::string level;
  debrief::CoverageFigures figures;
  Geometry ground;
};

std::size_t coverage_cell_count(const CoverageReport& report);

/// One cell at a time, so that any number of them needs no memory.
void visit_coverage_cells(const CoverageReport& report,
                          const std::function<void(const CoverageCell&)>& sink);

/// `pod`, `coverage`, ...
std::vector<Property> figure_properties(const debrief::CoverageFigures& figures);

/// Steps of a map of POD, the darkest (least found) last.
struct PodClass {
  double least = 0;
  std::string label;
};
const std::vector<PodClass>& pod_classes();
std::size_t pod_class_of(double pod);

}  // namespace sweepwright::formats
