#include <fmt/format.h>

#include "formats/sheet_parts.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/findings.hpp"
#include "sweepwright/formats/flight_profile.hpp"
#include "sweepwright/hazard/leg_name.hpp"

namespace sweepwright::formats {
namespace {

using hazard::Finding;
using hazard::Severity;

/// `MUST NOT FLY 2, CAUTION 1`; empty when there are none but notes.
std::string counts(const std::vector<Finding>& findings) {
  std::string text;
  for (const Severity severity :
       {Severity::must_not_fly, Severity::caution, Severity::not_checked}) {
    std::size_t count = 0;
    for (const Finding& finding : findings) count += finding.severity == severity ? 1 : 0;
    if (count == 0) continue;
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", severity_label(severity), count);
  }
  return text;
}

std::string minima_line(const plan::Plan& plan, const plan::Assignment& assignment) {
  const hazard::TerrainCheck& check = *assignment.terrain;
  const hazard::Minima& minima = assignment.unit.minima.value_or(plan.mission.minima);
  return fmt::format(
      "Checked with a minimum clearance of {} ({}), corridor {} to each side. {} Minimum safe "
      "altitude of the pattern: {}.",
      format_length(check.task.minimum, LengthUnit::foot, 0), minima.source,
      format_length(check.task.half_width, LengthUnit::nautical_mile, 2), kTerrainCaution,
      check.safe ? format_length(*check.safe, LengthUnit::foot, 0) : "not known");
}

std::string number(std::optional<Length> height) {
  return height ? fmt::format("{:.0f}", height->feet()) : "--";
}

/// `leg 3: 10300 ft to 2.1 NM, 11700 ft to 9.4 NM`; empty for one height.
std::string steps_line(const std::string& leg_name, const hazard::LegTerrain& leg) {
  std::string text;
  std::size_t heights = 0;
  for (std::size_t i = 0; i < leg.heights.size(); ++i) {
    const terrain::HeightStep& step = leg.heights[i];
    if (i + 1 < leg.heights.size() && leg.heights[i + 1].altitude == step.altitude) continue;
    text += fmt::format("{} {} ft to {:.1f} NM", heights++ == 0 ? ":" : ",", number(step.altitude),
                        step.to.nautical_miles());
  }
  return heights > 1 ? leg_name + text : "";
}

SheetBlock heights_to_fly(const plan::Assignment& assignment) {
  SheetBlock block{"Heights to fly, in steps along the leg and its turn", {}, {}};
  for (std::size_t i = 0; i < assignment.terrain->legs.size(); ++i) {
    std::string line =
        steps_line(hazard::leg_name(assignment.flown, i), assignment.terrain->legs[i]);
    if (!line.empty()) block.lines.push_back(std::move(line));
  }
  if (!block.lines.empty()) {
    block.lines.push_back("A greater height must be reached before its step begins.");
  }
  return block;
}

}  // namespace

void add_findings(Sheet& sheet, const plan::Plan& plan, const plan::Assignment& assignment) {
  const std::vector<Finding> findings = plan::findings_for(plan, assignment);
  sheet.findings.title = "Findings of the checks";
  for (const Finding& finding : findings) sheet.findings.lines.push_back(finding_text(finding));
  if (const std::string worst = counts(findings); !worst.empty()) {
    std::vector<std::string>& lines = sheet.instructions.lines;
    lines.insert(lines.begin(), {fmt::format("CHECKS: {}; see findings. The worst:", worst),
                                 finding_text(findings.front())});
  }
  if (!assignment.terrain) return;
  sheet.findings.lines.push_back(minima_line(plan, assignment));
  sheet.profile = flight_profile(*assignment.terrain, assignment.flown);
  sheet.heights = heights_to_fly(assignment);
  sheet.leg_heads.heights = true;
  for (std::size_t i = 0; i < sheet.legs.size(); ++i) {
    const hazard::LegTerrain& leg = assignment.terrain->legs[i];
    sheet.legs[i].altitude_ft = number(hazard::highest_planned(leg));
    sheet.legs[i].safe_altitude_ft = number(leg.safe);
  }
  sheet.legs_note +=
      " Alt: planned height above mean sea level, the highest of the leg; MSA: minimum safe "
      "altitude of the leg as flown; --: not known. Times are those of level flight.";
}

}  // namespace sweepwright::formats
