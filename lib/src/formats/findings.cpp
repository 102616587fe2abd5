#include "sweepwright/formats/findings.hpp"

#include <fmt/format.h>

#include "formats/finding_json.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/time_text.hpp"
#include "sweepwright/position/position_text.hpp"

namespace sweepwright::formats {
namespace {

using hazard::Finding;

std::string crew_text(const Finding& finding) {
  if (finding.crew.empty()) return "all";
  std::string text = finding.sector.empty() ? finding.crew : finding.sector + " " + finding.crew;
  if (finding.leg) text += fmt::format(" row {}", *finding.leg);
  return text;
}

std::string in_words(const Finding& finding) {
  std::string text = finding.text;
  if (finding.where) text += ", at " + format_position(*finding.where);
  if (finding.when) text += ", " + format_utc(*finding.when);
  if (finding.cure.empty()) return text;
  if (!text.ends_with('?')) text += ".";
  return text + " Cure: " + finding.cure;
}

std::string on_one_line(std::string text) {
  for (char& c : text) {
    if (static_cast<unsigned char>(c) < ' ') c = ' ';
  }
  return text;
}

std::string feet(Length height) {
  return format_length(height, LengthUnit::foot, 0);
}

}  // namespace

std::string_view severity_label(hazard::Severity severity) {
  switch (severity) {
    case hazard::Severity::must_not_fly:
      return "MUST NOT FLY";
    case hazard::Severity::caution:
      return "CAUTION";
    case hazard::Severity::not_checked:
      return "NOT CHECKED";
    case hazard::Severity::note:
      break;
  }
  return "note";
}

std::string finding_text(const Finding& finding) {
  return fmt::format("{}: {}", severity_label(finding.severity), in_words(finding));
}

std::string findings_text(const std::vector<Finding>& findings) {
  if (findings.empty()) return "The checks that were made found nothing.\n";
  std::string text;
  for (const Finding& finding : findings) {
    text += fmt::format("{:<12} {:<12} {}: {}\n", severity_label(finding.severity),
                        hazard::name(finding.kind), on_one_line(crew_text(finding)),
                        on_one_line(in_words(finding)));
  }
  return text;
}

std::string minima_text(const plan::Plan& plan) {
  std::string text;
  for (const plan::Assignment& assignment : plan.assignments) {
    if (!assignment.terrain) continue;
    const hazard::TerrainTask& task = assignment.terrain->task;
    const hazard::Minima& minima = assignment.unit.minima.value_or(plan.mission.minima);
    text += fmt::format(
        "{} {}: minimum clearance {} ({}), corridor {} to each side, minimum safe altitude {}\n",
        assignment.sector_name, assignment.unit.callsign, feet(task.minimum), minima.source,
        format_length(task.half_width, LengthUnit::nautical_mile, 2),
        assignment.terrain->safe ? feet(*assignment.terrain->safe) : "not known");
  }
  return text;
}

std::string findings_json(const plan::Plan& plan, const Provenance& provenance) {
  using nlohmann::ordered_json;
  ordered_json json{{"incident", plan.mission.incident.name},
                    {"must_not_fly", hazard::forbids_flight(plan.findings)},
                    {"findings", findings_value(plan.findings)},
                    {"crews", ordered_json::array()},
                    {"provenance", ordered_json::parse(provenance_json(provenance).text)}};
  for (const plan::Assignment& assignment : plan.assignments) {
    json["crews"].push_back({{"callsign", assignment.unit.callsign},
                             {"sector", assignment.sector_name},
                             {"terrain", terrain_value(plan.mission, assignment)}});
  }
  return json.dump(2) + "\n";
}

}  // namespace sweepwright::formats
