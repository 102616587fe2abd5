// Writes a belief as GeoJSON, KML, CSV or JSON: each cell with its probability of containment.
//
// Conventions: each cell carries `cell`, `system`, `level`, `probability` and `area_m2` (to a
// square
//   metre); probabilities have all their digits. GeoJSON and JSON have `outside`, `cumulative_pos`
//   and whatever `members` holds beside the cells. A CSV table has the cells only: what they leave
//   of 1 is outside. Lines of equal containment are GeoJSON features with `containment` and no
//   `cell`.
//   KML shades the cells with the ramp of the map (ramp.hpp), a folder for each step of the legend.
// Promises: P1 parse_belief() reads back what was written, KML excepted (belief_files_test.cpp).
#pragma once

#include <vector>

#include "sweepwright/belief/belief.hpp"
#include "sweepwright/formats/geometry.hpp"
#include "sweepwright/formats/property.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

enum class BeliefFormat { geojson, kml, csv, json };

/// A line that holds a share of the belief: a ring round a datum.
struct ContainmentLine {
  double containment = 0;  ///< 0.5 for the line that holds half
  std::string name;        ///< what it belongs to; may be empty
  Geometry ground;
};

/// What stands beside the cells.
struct BeliefExtras {
  std::vector<Property> members;       ///< the working, in GeoJSON and JSON
  std::vector<ContainmentLine> lines;  ///< in GeoJSON and KML
};

void write_belief(Sink& sink, const belief::Belief& belief, BeliefFormat format,
                  const Provenance& provenance, const BeliefExtras& extras = {});

}  // namespace sweepwright::formats
