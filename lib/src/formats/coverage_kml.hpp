// The coverage of tracks as KML; private to the formats room.
#pragma once

#include "sweepwright/formats/coverage_writer.hpp"

namespace sweepwright::formats {

void write_coverage_kml(Sink& sink, const CoverageReport& report, const Provenance& provenance);

}  // namespace sweepwright::formats
