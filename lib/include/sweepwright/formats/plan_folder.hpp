// Writes a plan's folder: one sub-folder for the incident, one for each crew.
//
//   incident/plan.json         every figure, for machines
//   incident/overlay.kml       area, grid, sectors, patterns
//   incident/overlay.geojson   the same
//   incident/map.svg           the whole area as a picture
//   incident/belief.geojson, belief.svg   where the object can be, when the mission tells
//   incident/map.html          the same as a page for tablets and laptops
//   incident/board.html, board-a4.pdf, board-letter.pdf   all crews, times and frequencies
//   incident/search-action-message.txt   the same as plain text
//   crews/A1-CALLSIGN/sheet.html   the crew's assignment
//   crews/A1-CALLSIGN/sheet-a4.pdf, sheet-letter.pdf, sheet-a5.pdf   the same, set on paper
//   crews/A1-CALLSIGN/route.gpx    the crew's route
//
// Promises: P1 each file appears whole or not at all; P2 everything is made before the first file
// is
//   written, so that a plan that cannot be shown leaves the folder as it was; P3 files that are not
//   on this list are not touched; P4 a callsign never leads out of the folder.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "sweepwright/formats/provenance.hpp"
#include "sweepwright/plan/plan.hpp"

namespace sweepwright::formats {

/// The name of a crew's folder: sector name and callsign, with ASCII letters, digits, `-` and `_`
/// only.
std::string crew_folder_name(const plan::Assignment& assignment);

/// Returns the files written, as paths from `folder`, in the order above. Throws Error(unwritable).
std::vector<std::filesystem::path> write_plan_folder(const plan::Plan& plan,
                                                     const std::filesystem::path& folder,
                                                     const Provenance& provenance);

}  // namespace sweepwright::formats
