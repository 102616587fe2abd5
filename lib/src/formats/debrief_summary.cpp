#include "sweepwright/formats/debrief_summary.hpp"

#include <fmt/format.h>

#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::formats {
namespace {

std::string percent(double share) {
  return fmt::format("{:.1f} %", 100 * share);
}

void add_sorties(std::string& text, const DebriefOutcome& outcome) {
  text += fmt::format("\n{:<6} {:<14} {:>8} {:>8} {:>7} {:>7} {:>8} {:>8} {:>7} {:>6} {:>8}\n",
                      "Sector", "Callsign", "W plan", "W flown", "C plan", "C flown", "POD plan",
                      "POD", "Missed", "Error", "Adds POS");
  for (const debrief::SortieResult& result : outcome.debriefing.sorties) {
    const plan::Assignment& assignment = outcome.plan.assignments[result.sortie.input.assignment];
    text += fmt::format(
        "{:<6} {:<14} {:>5.2f} NM {:>5.2f} NM {:>7.2f} {:>7.2f} {:>6.0f} % {:>6.0f} % {:>3}/{:<3} "
        "{:>4.0f} m {:>8}\n",
        assignment.sector_name, assignment.unit.callsign,
        assignment.sweep_width.width.nautical_miles(), result.sortie.mean_width.nautical_miles(),
        assignment.coverage.value() * assignment.searched_share, result.coverage.value(),
        100 * result.planned_pod.value(), 100 * result.pod.value(), result.against.missed,
        result.against.legs.size(), result.against.mean_error.metres(),
        percent(result.success_share));
  }
}

void add_holes(std::string& text, const DebriefOutcome& outcome) {
  std::size_t count = 0;
  Area all;
  for (const auto& of_sector : outcome.holes) {
    count += of_sector.size();
    for (const debrief::Hole& hole : of_sector) all += hole.area;
  }
  text += fmt::format("\nHoles under {:.0f} %: {}, together {:.1f} NM2\n",
                      100 * outcome.hole_below.value(), count, all.square_nautical_miles());
}

}  // namespace

std::string debrief_summary(const DebriefOutcome& outcome) {
  const debrief::Debriefing& found = outcome.debriefing;
  std::string text = fmt::format("{}: debrief of {} sorties\n", outcome.plan.mission.incident.name,
                                 found.sorties.size());
  text += fmt::format("Probability of success {} ({} law), of all searches so far {}\n",
                      percent(found.success), sweep::name(found.law),
                      percent(found.after.cumulative_success));
  text += fmt::format("Outside all cells {} before, {} after\n", percent(found.before.outside),
                      percent(found.after.outside));
  add_sorties(text, outcome);
  add_holes(text, outcome);
  const std::vector<CrewSighting> seen = sightings(outcome);
  if (!seen.empty()) text += fmt::format("Sightings: {}\n", seen.size());
  if (outcome.next_plan && outcome.next_plan->belief) {
    text += fmt::format("Next period, same units: probability of success {}, {} at most\n",
                        percent(outcome.next_plan->belief->probability_of_success.value()),
                        percent(outcome.next_plan->belief->bound.value()));
  } else if (!outcome.next_refusal.empty()) {
    text += fmt::format("The next mission cannot be planned as it is: {}\n", outcome.next_refusal);
  }
  text += "\n";
  for (const std::string& remark : found.remarks) text += remark + "\n";
  for (const debrief::SortieResult& result : found.sorties) {
    for (const std::string& remark : result.sortie.remarks) {
      text += fmt::format(
          "{}: {}\n", outcome.plan.assignments[result.sortie.input.assignment].sector_name, remark);
    }
  }
  for (const std::string& line : outcome.logs) text += line + "\n";
  return text;
}

}  // namespace sweepwright::formats
