// Writes a plan as overlays for planners' and crews' maps.
//
// Conventions: KML folders: search area, grid, sectors, and one for each crew. GeoJSON features say
//   what they are in `part`: area, datum, cell, sector, base, commence-search-point, leg. GPX: one
//   route for a crew, from base over the commence search point to the last leg's end, each point
//   named in at most six characters.
#pragma once

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

void write_plan_kml(Sink& sink, const plan::Plan& plan, const Provenance& provenance);
void write_plan_geojson(Sink& sink, const plan::Plan& plan, const Provenance& provenance);
void write_crew_gpx(Sink& sink, const plan::Plan& plan, const plan::Assignment& assignment,
                    const Provenance& provenance);

}  // namespace sweepwright::formats
