// The overlays of a debrief: GeoJSON, KML, a table of cells, and the probability of detection as a
// georeferenced picture.
//
// Conventions: every feature has a `part`: `sector`, `track`, `hole`, `sighting`, `cell`. Tracks
// are
//   cut where their use changes; `use` says which it is. Cells carry `pod`, `probability` (of
//   containment, after the search), `probability_before` and `next_coverage`.
//   The picture lies in degrees on WGS 84: the world file says where, the .prj in which system.
//   Dark is well covered; ground beyond the raster is clear.
// Domain: the picture: rasters that do not reach beyond 85 degrees of latitude; none beyond. It has
//   at most kMostPicturePixels; across the antimeridian its longitudes go on beyond 180.
// Accuracy: a pixel shows the raster cell in which its middle lies, to a fifth of a pixel.
// Source: RFC 7946; OGC KML 2.2; world files and .prj: ESRI's published forms [from memory].
#pragma once

#include <optional>
#include <string>

#include "sweepwright/formats/debrief_outcome.hpp"
#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/formats/sink.hpp"

namespace sweepwright::formats {

inline constexpr std::size_t kMostPicturePixels = 2'000'000;

void write_debrief_geojson(Sink& sink, const DebriefOutcome& outcome, const Provenance& provenance);
void write_debrief_kml(Sink& sink, const DebriefOutcome& outcome, const Provenance& provenance);
void write_debrief_cells(Sink& sink, const DebriefOutcome& outcome);
std::string debrief_json(const DebriefOutcome& outcome, const Provenance& provenance);

struct RasterPicture {
  std::string png;
  std::string world;       ///< six lines
  std::string projection;  ///< well-known text
};
std::optional<RasterPicture> detection_picture(const debrief::Debriefing& found);

}  // namespace sweepwright::formats
