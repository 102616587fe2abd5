#include "sweepwright/formats/plan_summary.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

#include "formats/plan_remarks.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/base/text.hpp"
#include "sweepwright/formats/findings.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

std::string miles(Length length) {
  return format_length(length, LengthUnit::nautical_mile, 2);
}

/// The text cut or filled to `width` characters.
std::string column(std::string_view text, std::size_t width) {
  // Width in characters, not bytes: count all but continuation bytes.
  std::size_t characters = 0;
  std::size_t end = 0;
  while (end < text.size() && characters < width) {
    ++end;
    while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) ++end;
    ++characters;
  }
  return std::string(text.substr(0, end)) + std::string(width - characters, ' ');
}

std::string belief_line(const plan::PlanBelief& belief) {
  const double bound = belief.bound.value();
  return fmt::format(
      "Probability of containment in the sectors {:.1f} % ({:.1f} % outside the belief's cells), "
      "of success {:.1f} %;\nthe same effort could find {:.1f} % at most: {:.0f} % of that is "
      "reached\n\n",
      100 * belief.probability_of_containment.value(), 100 * belief.belief.outside,
      100 * belief.probability_of_success.value(), 100 * bound,
      bound > 0 ? 100 * belief.probability_of_success.value() / bound : 0.0);
}

std::string containment_text(const plan::Assignment& assignment) {
  if (!assignment.probability_of_containment) return "";
  const double contained = assignment.probability_of_containment->value();
  return fmt::format(" {:>5.1f}% {:>5.1f}%", 100 * contained,
                     100 * contained * assignment.probability_of_detection.value());
}

}  // namespace

std::string plan_summary(const plan::Plan& plan) {
  const plan::Incident& incident = plan.mission.incident;
  std::string text = fmt::format(
      "{}\n{} to {}\nSearch object: {}\nArea {:.1f} NM2, effort {:.1f} NM2, coverage {:.2f}{}, "
      "probability of detection {:.0f} % ({})\n\n",
      incident.name, format_utc(incident.operational_period.from),
      format_utc(incident.operational_period.to), plan.mission.object.table_name,
      plan.searched.square_nautical_miles(), plan.effort.square_nautical_miles(),
      plan.coverage_planned.value(),
      plan.mission.area.polygons.empty()
          ? std::string()
          : fmt::format(" (wanted {:.2f})", plan.coverage_wanted.value()),
      100 * plan.probability_of_detection.value(), sweep::name(plan.mission.detection_law));
  if (plan.belief) text += belief_line(*plan.belief);
  text += fmt::format("{} {} {} {:>9} {:>8} {:>8} {:>5} {:>5} {:>5} {:>6} {:>5}\n",
                      column("Sector", 6), column("Callsign", 14), column("Pattern", 8), "Area NM2",
                      "W", "Spacing", "Cover", "POD", "Legs", "Needs", "Has");
  if (plan.belief) {
    text.pop_back();
    text += "    POC    POS\n";
  }
  for (const plan::Assignment& assignment : plan.assignments) {
    text += fmt::format(
        "{} {} {} {:>9.1f} {:>8} {:>8} {:>5.2f} {:>4.0f}% {:>5} {:>6} {:>5}{}\n",
        column(assignment.sector_name, 6), column(assignment.unit.callsign, 14),
        column(pattern::info(assignment.pattern.kind).name, 8),
        area(assignment.sector).square_nautical_miles(), miles(assignment.sweep_width.width),
        miles(assignment.spacing), assignment.coverage.value(),
        100 * assignment.probability_of_detection.value(), search_leg_count(assignment.pattern),
        format_duration_minutes(assignment.pattern_time),
        format_duration_minutes(assignment.search_time), containment_text(assignment));
  }
  const std::vector<std::string> remarks = plan_remarks(plan);
  if (!remarks.empty()) text += "\n";
  for (const std::string& remark : remarks) text += remark + "\n";
  text += "\n" + findings_text(plan.findings);
  return text;
}

}  // namespace sweepwright::formats
