// Writes the coverage of tracks as flown: GeoJSON, CSV, KML, and a summary as JSON.
//
// Conventions: each cell carries `pod`, `coverage`, `passes`, `nearest_m` (null where no track came
//   within its sweep width), `swept_share`, `effort_m2` and `area_m2`. Cells are those of the named
//   grid when there is one: `cell`, `system`, `level`, means over the cell's ground; else those of
//   the raster: `cell` is column/row from the lower left. GeoJSON has the figures of the whole area
//   beside the cells, and the holes as features with `hole` (1 is the largest) and no `cell`. KML
//   has a folder for each step of POD and one for the holes. JSON has the figures, the holes with
//   their outlines, and the named cells; cells of the raster only in the other formats.
// Domain: at most kMostKmlCells cells in KML.
// Promises: P1 same report, same bytes; P2 GeoJSON areas are valid: parse_area() reads them
//   (coverage_writer_test.cpp).
// Source: RFC 7946; OGC 07-147r2, KML 2.2.
#pragma once

#include <optional>
#include <vector>

#include "sweepwright/debrief/grid_coverage.hpp"
#include "sweepwright/debrief/holes.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

struct CoverageReport {
  Length sweep_width;
  sweep::DetectionLaw law = sweep::DetectionLaw::inverse_cube;
  Length track_length;                           ///< of all tracks, also outside the area
  std::vector<Path> tracks;                      ///< for pictures: may be thinned out
  Region area;                                   ///< asked for, or round the tracks
  debrief::CoverageMap map;                      ///< of the raster over it
  std::vector<std::size_t> inside;               ///< its cells that lie in the area
  debrief::CoverageFigures figures;              ///< of those
  std::vector<debrief::GridCellCoverage> named;  ///< empty without a grid
  std::optional<sweep::Probability> wanted;      ///< under which holes were looked for
  std::vector<debrief::Hole> holes;
};

enum class CoverageFormat { geojson, csv, kml, json };

inline constexpr std::size_t kMostKmlCells = 50'000;

/// Throws Error(value) for more cells than KML can show.
void write_coverage(Sink& sink, const CoverageReport& report, CoverageFormat format,
                    const Provenance& provenance);

}  // namespace sweepwright::formats
