// Writes sectors in any of the open formats.
//
// Conventions: each sector carries `sector`, `unit`, `area_m2` (on the ellipsoid), `share` (of all
//   sectors' ground), `long_side_true_deg` and `leg_true_deg` (at its middle, either way along it),
//   `corners` (as a person would read them out: within 50 m of the edge, in degrees and decimal
//   minutes) and then whatever came with the ground. The geometry has all corners; the edges that
//   two sectors share have the same points in both.
// Accuracy: areas to 0.1 m2, shares to 1e-9, directions to 1e-4 degree.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "sweepwright/formats/property.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"
#include "sweepwright/sector/sectors.hpp"

namespace sweepwright::formats {

struct SectorRow {
  sector::Sector sector;
  std::vector<Property> more;  ///< coverage, probabilities: what came with the ground
};

enum class SectorFormat { geojson, kml, csv, json };

/// `remarks`: what a planner must know of the sectors.
void write_sectors(Sink& sink, std::span<const SectorRow> rows,
                   const std::vector<std::string>& remarks, SectorFormat format,
                   const Provenance& provenance);

}  // namespace sweepwright::formats
