#include "formats/coverage_kml.hpp"

#include <fmt/format.h>

#include "formats/coverage_cells.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/kml_writer.hpp"
#include "sweepwright/formats/ramp.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::uint8_t kFillOpacity = 150;
constexpr Colour kEdge{70, 70, 70, 60};
constexpr Colour kHoleEdge{201, 49, 0};
constexpr Colour kTrack{26, 26, 26, 200};

std::string style_id(std::size_t step) {
  return fmt::format("step-{}", step + 1);
}

KmlDocument document(const CoverageReport& report, const Provenance& provenance) {
  KmlDocument document;
  document.name = "Coverage as flown";
  document.description =
      fmt::format("Mean POD {:.1f} %.\n{}", 100 * report.figures.pod, provenance_text(provenance));
  const std::size_t steps = pod_classes().size();
  for (std::size_t i = 0; i < steps; ++i) {
    Colour fill = ramp_colour(1 - static_cast<double>(i) / static_cast<double>(steps - 1));
    fill.opacity = kFillOpacity;
    document.styles.push_back(
        {.id = style_id(i), .line = kEdge, .line_width_pixels = 1, .fill = fill});
  }
  document.styles.push_back({.id = "hole", .line = kHoleEdge, .line_width_pixels = 3, .fill = {}});
  document.styles.push_back({.id = "track", .line = kTrack, .line_width_pixels = 1, .fill = {}});
  return document;
}

void write_cells(KmlWriter& writer, const CoverageReport& report, std::size_t step) {
  bool open = false;
  visit_coverage_cells(report, [&](const CoverageCell& cell) {
    if (pod_class_of(cell.figures.pod) != step) return;
    if (!open) writer.open_folder(pod_classes()[step].label);
    open = true;
    Placemark placemark;
    placemark.name = cell.name;
    placemark.description = fmt::format("POD {:.0f} %", 100 * cell.figures.pod);
    placemark.style_id = style_id(step);
    placemark.properties = figure_properties(cell.figures);
    placemark.geometry = cell.ground;
    writer.placemark(placemark);
  });
  if (open) writer.close_folder();
}

void write_holes(KmlWriter& writer, const CoverageReport& report) {
  if (!report.wanted) return;
  writer.open_folder(fmt::format("Holes: POD under {:g} %", 100 * report.wanted->value()));
  for (std::size_t i = 0; i < report.holes.size(); ++i) {
    Placemark placemark;
    placemark.name = fmt::format("Hole {}", i + 1);
    placemark.description =
        fmt::format("{:.2f} NM\u00b2, mean POD {:.0f} %",
                    report.holes[i].area.square_nautical_miles(), 100 * report.holes[i].mean_pod);
    placemark.style_id = "hole";
    placemark.geometry = report.holes[i].region;
    writer.placemark(placemark);
  }
  writer.close_folder();
}

}  // namespace

void write_coverage_kml(Sink& sink, const CoverageReport& report, const Provenance& provenance) {
  if (coverage_cell_count(report) > kMostKmlCells) {
    throw Error(ErrorCode::value,
                fmt::format("{} cells are too many for KML, expected at most {}",
                            coverage_cell_count(report), kMostKmlCells),
                "take larger cells, the cells of a grid, or GeoJSON");
  }
  KmlWriter writer(sink, document(report, provenance));
  for (std::size_t step = 0; step < pod_classes().size(); ++step) {
    write_cells(writer, report, step);
  }
  write_holes(writer, report);
  writer.open_folder("Tracks");
  for (const Path& path : report.tracks) {
    if (path.size() < 2) continue;
    Placemark placemark;
    placemark.style_id = "track";
    placemark.geometry = path;
    writer.placemark(placemark);
  }
  writer.finish();
}

}  // namespace sweepwright::formats
