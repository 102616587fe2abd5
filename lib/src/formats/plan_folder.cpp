#include "sweepwright/formats/plan_folder.hpp"

#include <fmt/format.h>

#include "formats/folder_files.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/belief_map.hpp"
#include "sweepwright/formats/belief_writer.hpp"
#include "sweepwright/formats/board.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/map_page.hpp"
#include "sweepwright/formats/pdf_writer.hpp"
#include "sweepwright/formats/plan_json.hpp"
#include "sweepwright/formats/plan_overlays.hpp"
#include "sweepwright/formats/search_action_message.hpp"
#include "sweepwright/formats/sheet.hpp"
#include "sweepwright/formats/sheet_pages.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

namespace fs = std::filesystem;

/// A4 on its side, less the margins that printers need.
constexpr PaperSize kOverviewSize{277, 190};

constexpr double kLeastBoardWidth = 180;  // mm

std::vector<NamedText> all_files(const plan::Plan& plan, const Provenance& provenance) {
  const fs::path incident("incident");
  std::vector<NamedText> files;
  files.push_back({incident / "plan.json", plan_json(plan, provenance)});
  files.push_back(
      {incident / "search-action-message.txt", write_search_action_message(plan, provenance)});
  files.push_back({incident / "overlay.kml",
                   text_of([&](Sink& sink) { write_plan_kml(sink, plan, provenance); })});
  files.push_back({incident / "overlay.geojson",
                   text_of([&](Sink& sink) { write_plan_geojson(sink, plan, provenance); })});
  files.push_back({incident / "map.svg", write_svg(draw_overview_map(plan, kOverviewSize))});
  if (plan.belief) {
    const belief::Belief& belief = plan.belief->belief;
    files.push_back({incident / "belief.geojson", text_of([&](Sink& sink) {
                       write_belief(sink, belief, BeliefFormat::geojson, provenance);
                     })});
    files.push_back(
        {incident / "belief.svg", write_svg(draw_belief_map(belief, {}, kOverviewSize))});
  }
  files.push_back({incident / "map.html", write_map_page(plan, provenance)});
  files.push_back({incident / "board.html", write_board_html(make_board(plan, provenance))});
  for (const Paper& paper : papers()) {
    if (paper.size.width_mm < kLeastBoardWidth) continue;  // a kneeboard is no board
    files.push_back(
        {incident / fmt::format("board-{}.pdf", paper.name),
         write_pdf(set_board(plan, provenance, paper), {"Board: " + plan.mission.incident.name,
                                                        creator(provenance), provenance.stamp})});
  }
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    const plan::Assignment& assignment = plan.assignments[i];
    const fs::path crew = fs::path("crews") / crew_folder_name(assignment);
    files.push_back({crew / "sheet.html", write_sheet(plan, i, provenance)});
    for (const Paper& paper : papers()) {
      files.push_back(
          {crew / fmt::format("sheet-{}.pdf", paper.name),
           write_pdf(set_sheet(plan, i, provenance, paper),
                     {crew_folder_name(assignment), creator(provenance), provenance.stamp})});
    }
    files.push_back({crew / "route.gpx", text_of([&](Sink& sink) {
                       write_crew_gpx(sink, plan, assignment, provenance);
                     })});
  }
  return files;
}

}  // namespace

std::string crew_folder_name(const plan::Assignment& assignment) {
  std::string name = assignment.sector_name + "-";
  for (const char c : assignment.unit.callsign) {
    const bool plain = is_ascii_letter(c) || is_ascii_digit(c) || c == '-' || c == '_';
    // One dash for any run of other characters.
    if (plain) {
      name += c;
    } else if (name.back() != '-') {
      name += '-';
    }
  }
  while (name.back() == '-') name.pop_back();
  return name;
}

std::vector<fs::path> write_plan_folder(const plan::Plan& plan, const fs::path& folder,
                                        const Provenance& provenance) {
  return write_folder(folder, all_files(plan, provenance));
}

}  // namespace sweepwright::formats
