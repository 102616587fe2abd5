#include "sweepwright/formats/debrief_folder.hpp"

#include <fmt/format.h>

#include "formats/folder_files.hpp"
#include "sweepwright/formats/belief_writer.hpp"
#include "sweepwright/formats/debrief_map.hpp"
#include "sweepwright/formats/debrief_overlays.hpp"
#include "sweepwright/formats/debrief_report.hpp"
#include "sweepwright/formats/pdf_writer.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

namespace fs = std::filesystem;

/// A report is read at a desk, not on a knee.
constexpr std::string_view kKneeboard = "a5";

std::vector<NamedText> all_files(const DebriefOutcome& outcome, const Provenance& provenance) {
  const fs::path debrief("debrief");
  std::vector<NamedText> files;
  const DebriefReport report = make_debrief_report(outcome, provenance);
  files.push_back({debrief / "report.html", write_debrief_html(report)});
  for (const Paper& paper : papers()) {
    if (paper.name == kKneeboard) continue;
    files.push_back({debrief / fmt::format("report-{}.pdf", paper.name),
                     write_pdf(set_debrief(report, outcome, paper),
                               {"Debrief", creator(provenance), provenance.stamp})});
  }
  files.push_back({debrief / "debrief.json", debrief_json(outcome, provenance)});
  files.push_back({debrief / "overlay.geojson",
                   text_of([&](Sink& sink) { write_debrief_geojson(sink, outcome, provenance); })});
  files.push_back({debrief / "overlay.kml",
                   text_of([&](Sink& sink) { write_debrief_kml(sink, outcome, provenance); })});
  files.push_back(
      {debrief / "cells.csv", text_of([&](Sink& sink) { write_debrief_cells(sink, outcome); })});
  if (const auto picture = detection_picture(outcome.debriefing)) {
    files.push_back({debrief / "detection.png", picture->png});
    files.push_back({debrief / "detection.pgw", picture->world});
    files.push_back({debrief / "detection.prj", picture->projection});
  }
  files.push_back({debrief / "map.svg", write_svg(report.map)});
  return files;
}

}  // namespace

std::vector<fs::path> write_next_folder(const NextMission& next, const debrief::Debriefing& found,
                                        const fs::path& folder, const Provenance& provenance) {
  const fs::path into(kNextFolder);
  const std::string belief = text_of(
      [&](Sink& sink) { write_belief(sink, found.after, BeliefFormat::geojson, provenance); });
  return write_folder(folder, {{into / kNextBelief, belief}, {into / kNextMission, next.text}});
}

std::vector<fs::path> write_debrief_folder(const DebriefOutcome& outcome, const fs::path& folder,
                                           const Provenance& provenance) {
  return write_folder(folder, all_files(outcome, provenance));
}

}  // namespace sweepwright::formats
