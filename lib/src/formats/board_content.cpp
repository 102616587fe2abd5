#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "formats/board_parts.hpp"
#include "formats/crew_times.hpp"
#include "formats/day_bands.hpp"
#include "formats/plan_remarks.hpp"
#include "formats/sheet_figures.hpp"
#include "formats/sheet_parts.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/board.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/timeline.hpp"

namespace sweepwright::formats {
namespace {

/// Of the map in the HTML page.
constexpr PaperSize kMapSize{277, 160};
constexpr std::string_view kUnknown = "–";

std::string tenths_percent(double share) {
  return fmt::format("{:.1f} %", 100 * share);
}

std::vector<SheetField> key_figures(const plan::Plan& plan) {
  std::vector<SheetField> figures{
      {"Area", area_text(plan.searched)},
      {"Crews", std::to_string(plan.assignments.size())},
      {"Coverage", fmt::format("{:.2f}", plan.coverage_planned.value())},
      {"POD", percent_text(plan.probability_of_detection.value())}};
  if (plan.belief) {
    figures.push_back(
        {"POC in the sectors", tenths_percent(plan.belief->probability_of_containment.value())});
    figures.push_back({"POS", tenths_percent(plan.belief->probability_of_success.value())});
  }
  return figures;
}

std::string height_text(const plan::SearchUnit& unit) {
  if (unit.search_height) return feet_text(*unit.search_height);
  return unit.search_altitude ? std::string(kUnknown) : "on surface";
}

/// A column of the table of crews, by what it says of each.
struct CrewColumn {
  ReportColumn column;
  std::function<std::string(const plan::Assignment&)> text;
};

std::vector<CrewColumn> crew_columns(const plan::Plan& plan) {
  using Crew = plan::Assignment;
  std::vector<CrewColumn> columns{
      {{"Sector", 5, true}, [](const Crew& crew) { return crew.sector_name; }},
      {{"Callsign", 13, true}, [](const Crew& crew) { return crew.unit.callsign; }},
      {{"Type", 16, true},
       [](const Crew& crew) {
         return crew.unit.type.empty() ? std::string(sweep::name(crew.unit.platform))
                                       : crew.unit.type;
       }},
      {{"Base", 10, true}, [](const Crew& crew) { return crew.unit.base.name; }},
      {{"Pattern", 6, true},
       [](const Crew& crew) { return std::string(pattern::info(crew.pattern.kind).designator); }},
      {{"CSP", 15, true},
       [](const Crew& crew) { return position_text(commence_search_point(crew.pattern)); }},
      {{"First leg", 6.5},
       [](const Crew& crew) {
         return format_direction(crew.pattern.legs.front().line.start_track);
       }},
      {{"Height", 7.5}, [](const Crew& crew) { return height_text(crew.unit); }}};
  const bool altitudes =
      std::any_of(plan.assignments.begin(), plan.assignments.end(),
                  [](const Crew& crew) { return crew.unit.search_altitude.has_value(); });
  if (altitudes) {
    columns.push_back({{"Altitude", 7.5}, [](const Crew& crew) {
                         const auto& altitude = crew.unit.search_altitude;
                         return altitude ? feet_text(*altitude) : std::string(kUnknown);
                       }});
  }
  columns.push_back(
      {{"Speed", 6}, [](const Crew& crew) { return knots_text(crew.unit.search_speed); }});
  columns.push_back({{"Area NM²", 7}, [](const Crew& crew) {
                       return fmt::format("{:.1f}", area(crew.sector).square_nautical_miles());
                     }});
  columns.push_back({{"W NM", 5}, [](const Crew& crew) {
                       return nautical_miles_number(crew.sweep_width.width);
                     }});
  columns.push_back(
      {{"S NM", 5}, [](const Crew& crew) { return nautical_miles_number(crew.spacing); }});
  columns.push_back(
      {{"C", 4.5}, [](const Crew& crew) { return fmt::format("{:.2f}", crew.coverage.value()); }});
  columns.push_back({{"POD", 5}, [](const Crew& crew) {
                       return percent_text(crew.probability_of_detection.value());
                     }});
  if (!plan.belief) return columns;
  columns.push_back({{"POC", 6}, [](const Crew& crew) {
                       const auto& contained = crew.probability_of_containment;
                       return contained ? tenths_percent(contained->value())
                                        : std::string(kUnknown);
                     }});
  columns.push_back({{"POS", 6}, [](const Crew& crew) {
                       const auto& contained = crew.probability_of_containment;
                       return contained ? tenths_percent(contained->value() *
                                                         crew.probability_of_detection.value())
                                        : std::string(kUnknown);
                     }});
  return columns;
}

ReportTable crews(const plan::Plan& plan) {
  ReportTable table;
  table.title = "Crews, sectors and what they are worth";
  const std::vector<CrewColumn> columns = crew_columns(plan);
  for (const CrewColumn& column : columns) table.columns.push_back(column.column);
  for (const plan::Assignment& assignment : plan.assignments) {
    table.rows.emplace_back();
    for (const CrewColumn& column : columns) table.rows.back().push_back(column.text(assignment));
  }
  table.note =
      "W sweep width, S track spacing, C coverage. Height above the surface, altitude above sea "
      "level.";
  return table;
}

ReportTable times(const plan::Plan& plan) {
  const std::chrono::minutes offset = plan.mission.incident.offset_from_utc;
  const auto clock = [&](TimePoint time) { return clock_text(time, offset); };
  ReportTable table;
  table.title = "Times, local: when each crew is where, and when it must be relieved";
  table.columns = {{"Sector", 6, true}, {"Callsign", 15, true},   {"Leaves base", 9},
                   {"On scene", 9},     {"Pattern done", 9},      {"Back at base", 9},
                   {"Leave by", 9},     {"limited by", 17, true}, {"To spare", 8}};
  for (const plan::Assignment& assignment : plan.assignments) {
    const CrewTimes when = crew_times(assignment);
    std::string leave;
    std::string limit;
    std::string spare(kUnknown);
    if (when.bingo) {
      leave = clock(*when.bingo);
      limit = "bingo: reserve on landing";
    } else if (assignment.endurance_use) {
      leave = std::string(kUnknown);
      limit = "cannot come back with its reserve";
    } else {
      leave = clock(moment(when.on_scene, assignment.on_scene_endurance));
      limit = "on-scene endurance";
    }
    if (assignment.endurance_use) spare = format_duration_minutes(assignment.endurance_use->spare);
    table.rows.push_back({assignment.sector_name, assignment.unit.callsign, clock(when.leaves_base),
                          clock(when.on_scene), clock(when.off_scene), clock(when.at_base), leave,
                          limit, spare});
  }
  table.note =
      "Bingo: the latest time to leave the pattern for the base; never after the pattern's end. To "
      "spare: endurance less ways, pattern and reserve.";
  return table;
}

ReportTable frequencies(const plan::Plan& plan) {
  ReportTable table{"Frequencies", {{"For", 2, true}, {"Frequency", 2, true}}, {}, ""};
  for (const plan::Channel& channel : plan.mission.channels) {
    table.rows.push_back({channel.name, channel.frequency});
  }
  if (table.rows.empty()) table.note = "None stated.";
  return table;
}

/// `05:36 to 20:31`, as far as the period holds it.
std::string light_text(const std::vector<plan::Period>& spans, const plan::Period& period,
                       std::chrono::minutes offset) {
  if (spans.empty()) return "none in the period";
  if (spans.front().from == period.from && spans.front().to == period.to) {
    return "throughout the period";
  }
  std::string out;
  for (const plan::Period& span : spans) {
    if (!out.empty()) out += ", ";
    out += "from " + (span.from == period.from ? "its start" : clock_text(span.from, offset));
    out += " to " + (span.to == period.to ? "its end" : clock_text(span.to, offset));
  }
  return out;
}

std::string light_line(const plan::Plan& plan) {
  const plan::Period& period = plan.mission.incident.operational_period;
  const std::chrono::minutes offset = plan.mission.incident.offset_from_utc;
  const DayBands bands = day_bands(middle(plan.area), period);
  return fmt::format("Sun {}; civil twilight or sun {} (local)",
                     light_text(bands.sun, period, offset),
                     light_text(bands.civil_twilight, period, offset));
}

std::string weather_line(const plan::Conditions& conditions) {
  std::string text =
      "Visibility " + format_length(conditions.visibility, LengthUnit::nautical_mile, 0);
  if (conditions.wind_speed) text += ", wind " + knots_text(*conditions.wind_speed);
  if (conditions.wind_from) {
    text += (conditions.wind_speed ? " from " : ", wind from ") +
            format_direction(*conditions.wind_from);
  }
  if (!conditions.weather.empty()) text += ". " + conditions.weather;
  return text;
}

}  // namespace

Board make_board(const plan::Plan& plan, const Provenance& provenance) {
  const plan::Incident& incident = plan.mission.incident;
  Board board;
  board.title = incident.name;
  board.heading = {{"Incident Number", incident.number},
                   {"Prepared by", incident.prepared_by},
                   {"Operational Period",
                    local_period_text(incident.operational_period, incident.offset_from_utc) +
                        "\n" + utc_period_text(incident.operational_period)},
                   {"Light in the period", light_line(plan)},
                   {"Search object", plan.mission.object.table_name +
                                         (plan.mission.object.description.empty()
                                              ? std::string()
                                              : ". " + plan.mission.object.description)},
                   {"Weather", weather_line(plan.mission.conditions)}};
  board.key_figures = key_figures(plan);
  board.crews = crews(plan);
  board.timeline = draw_timeline(plan, kMapSize.width_mm);
  board.times = times(plan);
  board.frequencies = frequencies(plan);
  board.findings = findings_table(plan);
  board.hazards = plan.mission.hazards;
  board.remarks = plan_remarks(plan);
  board.map = draw_overview_map(plan, kMapSize);
  board.cautions.assign(kCautions.begin(), kCautions.end());
  board.origin = origin_line(provenance);
  board.footer = footer_lines(provenance);
  return board;
}

}  // namespace sweepwright::formats
