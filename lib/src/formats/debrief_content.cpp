#include <fmt/format.h>

#include <algorithm>

#include "formats/sheet_figures.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/debrief_map.hpp"
#include "sweepwright/formats/debrief_report.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kMostHolesListed = 20;
constexpr std::size_t kMostCellsListed = 12;
constexpr PaperSize kMapSize{186, 190};

std::string metres_text(Length length) {
  return format_length(length, LengthUnit::metre, 0);
}

std::string number_text(double value) {
  return fmt::format("{:.2f}", value);
}

/// `4.3 %`
std::string tenths_text(double share) {
  return fmt::format("{:.1f} %", 100 * share);
}

std::string area_number(Area area) {
  return fmt::format("{:.2f}", area.square_nautical_miles());
}

const plan::Assignment& assignment_of(const DebriefOutcome& outcome,
                                      const debrief::SortieResult& result) {
  return outcome.plan.assignments[result.sortie.input.assignment];
}

std::string local_clock(const DebriefOutcome& outcome, std::optional<Instant> time) {
  if (!time) return "not known";
  return clock_text(std::chrono::floor<std::chrono::seconds>(*time),
                    outcome.plan.mission.incident.offset_from_utc);
}

std::string own_estimate(const debrief::SortieResult& result) {
  const auto& report = result.sortie.input.report;
  if (!report) return "none";
  std::string text = report->own_pod ? percent_text(report->own_pod->value()) : "";
  if (!report->own_estimate.empty()) {
    text += (text.empty() ? "" : ", ") + report->own_estimate;
  }
  return text.empty() ? "none" : text;
}

ReportTable sectors_table(const DebriefOutcome& outcome) {
  ReportTable table{"By sortie: planned and achieved",
                    {{"Sector", 0.8, true},
                     {"Callsign", 1.5, true},
                     {"On scene", 0.8},
                     {"Off", 0.8},
                     {"W plan", 0.8},
                     {"W flown", 0.8},
                     {"C plan", 0.8},
                     {"C flown", 0.8},
                     {"POD plan", 0.9},
                     {"POD flown", 0.9},
                     {"Crew's own", 1.1},
                     {"Adds POS", 0.9}},
                    {},
                    ""};
  for (const debrief::SortieResult& result : outcome.debriefing.sorties) {
    const plan::Assignment& assignment = assignment_of(outcome, result);
    table.rows.push_back({assignment.sector_name, assignment.unit.callsign,
                          local_clock(outcome, result.sortie.on_scene),
                          local_clock(outcome, result.sortie.off_scene),
                          number_text(assignment.sweep_width.width.nautical_miles()),
                          number_text(result.sortie.mean_width.nautical_miles()),
                          number_text(assignment.coverage.value() * assignment.searched_share),
                          number_text(result.coverage.value()),
                          percent_text(result.planned_pod.value()),
                          percent_text(result.pod.value()), own_estimate(result),
                          tenths_text(result.success_share)});
  }
  table.note = fmt::format(
      "W: sweep width in NM, flown: mean over what counts. C: coverage, effort in the sector / its "
      "ground. POD: mean over the sector, {} law. The crew's own estimate enters no figure.",
      sweep::name(outcome.debriefing.law));
  return table;
}

ReportTable flying_table(const DebriefOutcome& outcome) {
  ReportTable table{
      "How the patterns were flown",
      {{"Sector", 0.8, true},
       {"Callsign", 1.5, true},
       {"Legs", 0.7},
       {"Missed", 0.8},
       {"In part", 0.8},
       {"Flown", 0.8},
       {"Mean error", 1},
       {"Largest", 1},
       {"S plan", 0.8},
       {"S flown", 0.8},
       {"Widest", 0.8},
       {"Legs not flown whole", 2.2, true}},
      {},
      "Error: distance from the planned line. S: track spacing in NM, flown: mean between "
      "legs side by side."};
  for (const debrief::SortieResult& result : outcome.debriefing.sorties) {
    const plan::Assignment& assignment = assignment_of(outcome, result);
    const debrief::AgainstPlan& against = result.against;
    std::string not_whole;
    for (const debrief::LegAsFlown& leg : against.legs) {
      if (leg.flown_share >= debrief::kFlownFrom) continue;
      not_whole += fmt::format("{}{} ({})", not_whole.empty() ? "" : ", ", leg.number,
                               percent_text(leg.flown_share));
    }
    const auto spacing = [](std::optional<Length> value) {
      return value ? number_text(value->nautical_miles()) : "-";
    };
    table.rows.push_back({assignment.sector_name, assignment.unit.callsign,
                          fmt::format("{}", against.legs.size()), fmt::format("{}", against.missed),
                          fmt::format("{}", against.partly), percent_text(against.flown_share),
                          metres_text(against.mean_error), metres_text(against.largest_error),
                          number_text(against.planned_spacing.nautical_miles()),
                          spacing(against.mean_spacing), spacing(against.widest_spacing),
                          not_whole.empty() ? "none" : not_whole});
  }
  return table;
}

ReportTable uses_table(const DebriefOutcome& outcome) {
  ReportTable table{"What the time of each track went on (h:mm)",
                    {{"Sector", 0.8, true}, {"Callsign", 1.5, true}},
                    {},
                    "Only search counts. Gaps in a log count as nothing."};
  for (int use = 0; use < debrief::kUses; ++use) {
    table.columns.push_back({std::string(debrief::name(static_cast<debrief::Use>(use))), 1});
  }
  table.columns.push_back({"Track NM", 1});
  for (const debrief::SortieResult& result : outcome.debriefing.sorties) {
    const plan::Assignment& assignment = assignment_of(outcome, result);
    std::vector<std::string> row{assignment.sector_name, assignment.unit.callsign};
    Length distance;
    for (const debrief::UseTotal& total : result.sortie.totals) {
      row.push_back(format_duration_minutes(total.time));
      distance += total.distance;
    }
    row.push_back(fmt::format("{:.1f}", distance.nautical_miles()));
    table.rows.push_back(std::move(row));
  }
  return table;
}

ReportTable holes_table(const DebriefOutcome& outcome) {
  ReportTable table{
      fmt::format("Holes: ground with a POD under {}", percent_text(outcome.hole_below.value())),
      {{"Sector", 0.8, true},
       {"Size NM\u00b2", 1},
       {"Of the sector", 1},
       {"Mean POD", 1},
       {"Middle", 2.5, true}},
      {},
      ""};
  std::size_t left_out = 0;
  for (std::size_t i = 0; i < outcome.holes.size(); ++i) {
    const plan::Assignment& assignment = outcome.plan.assignments[i];
    const Area whole = area(assignment.sector);
    for (const debrief::Hole& hole : outcome.holes[i]) {
      if (table.rows.size() == kMostHolesListed) {
        ++left_out;
        continue;
      }
      table.rows.push_back({assignment.sector_name, area_number(hole.area),
                            percent_text(hole.area / whole), percent_text(hole.mean_pod),
                            position_text(middle(hole.region))});
    }
  }
  if (table.rows.empty()) table.note = "None.";
  if (left_out > 0) {
    table.note = fmt::format("{} more are on the overlay.", left_out);
  }
  return table;
}

ReportTable sightings_table(const DebriefOutcome& outcome) {
  ReportTable table{"Sightings",
                    {{"No.", 0.5, true},
                     {"Sector", 0.7, true},
                     {"Callsign", 1.2, true},
                     {"At", 0.7, true},
                     {"Position", 1.9, true},
                     {"What was seen", 3, true},
                     {"What was done", 2, true}},
                    {},
                    ""};
  for (const CrewSighting& one : sightings(outcome)) {
    const debrief::Sighting& sighting = one.sighting;
    table.rows.push_back(
        {fmt::format("{}", table.rows.size() + 1), one.sector, one.callsign,
         sighting.time ? clock_text(*sighting.time, outcome.plan.mission.incident.offset_from_utc)
                       : "not known",
         sighting.position ? position_text(*sighting.position) : "not known", sighting.seen,
         sighting.done});
  }
  if (table.rows.empty()) table.note = "None reported.";
  return table;
}

ReportTable belief_table(const DebriefOutcome& outcome) {
  const debrief::Debriefing& found = outcome.debriefing;
  ReportTable table{
      "What to believe now",
      {{"Ground", 1.4, true}, {"POC before", 1}, {"POD, all sorties", 1}, {"POC after", 1}},
      {},
      ""};
  double before = 0;
  double after = 0;
  for (const debrief::SectorResult& sector : found.sectors) {
    before += sector.containment_before;
    after += sector.containment_after;
    table.rows.push_back({"Sector " + outcome.plan.assignments[sector.assignment].sector_name,
                          tenths_text(sector.containment_before), percent_text(sector.pod.value()),
                          tenths_text(sector.containment_after)});
  }
  const double cells_before = 1 - found.before.outside;
  const double cells_after = 1 - found.after.outside;
  table.rows.push_back({"Cells beside the sectors",
                        tenths_text(std::max(0.0, cells_before - before)), "-",
                        tenths_text(std::max(0.0, cells_after - after))});
  table.rows.push_back({"Outside all cells", tenths_text(found.before.outside), "0 %",
                        tenths_text(found.after.outside)});
  table.note = fmt::format(
      "Bayes' rule: after = before x (1 - POD) / (1 - POS), cell by cell; POS {} of these sorties, "
      "{} of all searches so far.",
      tenths_text(found.success), tenths_text(found.after.cumulative_success));
  return table;
}

/// Sectors of the next plan; where there is none, the cells that the hours are best spent in.
ReportTable proposal_table(const DebriefOutcome& outcome) {
  if (outcome.next_plan) {
    const plan::Plan& next = *outcome.next_plan;
    ReportTable table{"Proposal for the next period: the same units, where they are worth most",
                      {{"Sector", 0.8, true},
                       {"Callsign", 1.5, true},
                       {"Pattern", 1, true},
                       {"NM\u00b2", 0.8},
                       {"S NM", 0.8},
                       {"POD", 0.8},
                       {"POC", 0.8},
                       {"POS", 0.8},
                       {"Begin", 2.4, true}},
                      {},
                      ""};
    for (const plan::Assignment& assignment : next.assignments) {
      const double containment =
          assignment.probability_of_containment.value_or(sweep::Probability()).value();
      const double detection = assignment.probability_of_detection.value();
      table.rows.push_back({assignment.sector_name, assignment.unit.callsign,
                            std::string(pattern::info(assignment.pattern.kind).name),
                            fmt::format("{:.1f}", area(assignment.sector).square_nautical_miles()),
                            number_text(assignment.spacing.nautical_miles()),
                            percent_text(detection), tenths_text(containment),
                            tenths_text(containment * detection),
                            position_text(pattern::commence_search_point(assignment.pattern))});
    }
    if (next.belief) {
      table.note = fmt::format(
          "Probability of success {}, given that nothing has been found; the same effort could "
          "find {} at most. next/mission.json plans it; mend the forecast and the units first.",
          tenths_text(next.belief->probability_of_success.value()),
          tenths_text(next.belief->bound.value()));
    }
    return table;
  }
  ReportTable table{"Proposal for the next period: where the same effort is worth most",
                    {{"Cell", 2, true}, {"POC after", 1}, {"Coverage", 1}},
                    {},
                    "The next mission cannot be planned as it is: " + outcome.next_refusal};
  if (!outcome.debriefing.next) return table;
  const std::vector<double>& coverages = outcome.debriefing.next->coverages;
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < coverages.size(); ++i) {
    if (coverages[i] > 0) order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return coverages[a] > coverages[b]; });
  if (order.size() > kMostCellsListed) order.resize(kMostCellsListed);
  for (const std::size_t cell : order) {
    table.rows.push_back({outcome.debriefing.after.cells[cell].name,
                          tenths_text(outcome.debriefing.after.probability[cell]),
                          number_text(coverages[cell])});
  }
  return table;
}

std::vector<std::string> remarks(const DebriefOutcome& outcome) {
  std::vector<std::string> lines = outcome.debriefing.remarks;
  for (const debrief::SortieResult& result : outcome.debriefing.sorties) {
    const plan::Assignment& assignment = assignment_of(outcome, result);
    for (const std::string& remark : result.sortie.remarks) {
      lines.push_back(
          fmt::format("{} {}: {}", assignment.sector_name, assignment.unit.callsign, remark));
    }
    if (!result.sortie.input.report) {
      lines.push_back(fmt::format("{} {}: no crew report: visibility and height as planned",
                                  assignment.sector_name, assignment.unit.callsign));
      continue;
    }
    for (const std::string& remark : result.sortie.input.report->remarks) {
      lines.push_back(fmt::format("{} {} reports: {}", assignment.sector_name,
                                  assignment.unit.callsign, remark));
    }
  }
  for (std::size_t i = 0; i < outcome.plan.assignments.size(); ++i) {
    const bool flown = std::any_of(
        outcome.debriefing.sorties.begin(), outcome.debriefing.sorties.end(),
        [&](const debrief::SortieResult& one) { return one.sortie.input.assignment == i; });
    if (!flown) {
      lines.push_back(fmt::format("{} {}: no track: it counts as not flown",
                                  outcome.plan.assignments[i].sector_name,
                                  outcome.plan.assignments[i].unit.callsign));
    }
  }
  lines.emplace_back(
      "sorties are taken as independent: the same crew over the same legs in the same light finds "
      "less");
  for (const std::string& change : outcome.next.changes) {
    lines.push_back("next/mission.json: " + change);
  }
  return lines;
}

/// From what it was made: command and inputs.
std::vector<std::string> footer(const Provenance& provenance) {
  std::vector<std::string> lines{"Made by: " + provenance.command};
  for (const InputDigest& input : provenance.inputs) {
    lines.push_back("Input " + input.name + ", SHA-256 " + input.sha256);
  }
  return lines;
}

}  // namespace

DebriefReport make_debrief_report(const DebriefOutcome& outcome, const Provenance& provenance) {
  const plan::Incident& incident = outcome.plan.mission.incident;
  const debrief::Debriefing& found = outcome.debriefing;
  DebriefReport report;
  report.title = incident.name;
  report.heading = {{"Incident Number", incident.number},
                    {"Operational Period",
                     local_period_text(incident.operational_period, incident.offset_from_utc) +
                         "\n" + utc_period_text(incident.operational_period)},
                    {"Search object", outcome.plan.mission.object.table_name},
                    {"Sorties", fmt::format("{} of {} crews", found.sorties.size(),
                                            outcome.plan.assignments.size())}};
  Area swept;
  for (const debrief::SortieResult& result : found.sorties) swept += result.sortie.effort;
  const double planned =
      outcome.plan.belief ? outcome.plan.belief->probability_of_success.value() : -1;
  report.key_figures = {
      {"POS of these sorties", tenths_text(found.success)},
      {"POS planned", planned < 0 ? "no belief" : tenths_text(planned)},
      {"POS of all searches", tenths_text(found.after.cumulative_success)},
      {"Effort swept", fmt::format("{:.0f} of {:.0f} NM\u00b2", swept.square_nautical_miles(),
                                   outcome.plan.effort.square_nautical_miles())},
      {"Left outside all cells", tenths_text(found.after.outside)}};
  report.sectors = sectors_table(outcome);
  report.flying = flying_table(outcome);
  report.uses = uses_table(outcome);
  report.holes = holes_table(outcome);
  report.sightings = sightings_table(outcome);
  report.belief = belief_table(outcome);
  report.proposal = proposal_table(outcome);
  report.map = draw_debrief_map(outcome, kMapSize);
  report.chart = draw_debrief_chart(outcome, kMapSize.width_mm);
  report.remarks = remarks(outcome);
  report.dropped = outcome.logs;
  report.dropped.insert(report.dropped.end(), outcome.problems.begin(), outcome.problems.end());
  for (const std::string_view caution : kCautions) report.cautions.emplace_back(caution);
  report.origin = creator(provenance) + ", made " + format_utc(provenance.stamp) +
                  ". WGS 84, TRUE north. NM = 1852 m, kt, ft.";
  report.footer = footer(provenance);
  return report;
}

}  // namespace sweepwright::formats
