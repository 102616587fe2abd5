// Writes a belief as KML, shaded as on the map; private to the formats room.
#pragma once

#include <vector>

#include "sweepwright/formats/belief_writer.hpp"

namespace sweepwright::formats {

void write_belief_kml(Sink& sink, const belief::Belief& belief, const Provenance& provenance,
                      const std::vector<ContainmentLine>& lines);

}  // namespace sweepwright::formats
