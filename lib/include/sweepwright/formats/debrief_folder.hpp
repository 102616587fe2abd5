// Writes a debrief's folder.
//
//   debrief/report.html                        the report, as a page
//   debrief/report-a4.pdf, report-letter.pdf   the same, set on paper
//   debrief/debrief.json                       every figure, for machines
//   debrief/overlay.geojson, overlay.kml       sectors, tracks by use, holes, sightings, cells
//   debrief/cells.csv                          each cell: detection, belief before and after, next
//   debrief/detection.png, .pgw, .prj          probability of detection as a georeferenced picture
//   debrief/map.svg                            the map of the report
//   next/mission.json, next/belief.geojson     the next period, as `plan` takes it
//
// Promises: P1 each file appears whole or not at all; P2 all files of `debrief` are made before the
//   first of them is written; P3 files that are not on this list are not touched.
#pragma once

#include <filesystem>
#include <string_view>
#include <vector>

#include "sweepwright/formats/debrief_outcome.hpp"
#include "sweepwright/formats/provenance.hpp"

namespace sweepwright::formats {

/// The files of `next`: the mission to plan from, and its belief.
std::vector<std::filesystem::path> write_next_folder(const NextMission& next,
                                                     const debrief::Debriefing& found,
                                                     const std::filesystem::path& folder,
                                                     const Provenance& provenance);

/// The files of `debrief`. Both return the files written, as paths from `folder`, and throw
/// Error(unwritable).
std::vector<std::filesystem::path> write_debrief_folder(const DebriefOutcome& outcome,
                                                        const std::filesystem::path& folder,
                                                        const Provenance& provenance);

/// Where the files of `next` lie, from the folder: `next/mission.json`, and its belief beside it.
inline constexpr std::string_view kNextFolder = "next";
inline constexpr std::string_view kNextMission = "mission.json";
inline constexpr std::string_view kNextBelief = "belief.geojson";

}  // namespace sweepwright::formats
