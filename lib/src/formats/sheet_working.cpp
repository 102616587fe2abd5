#include <fmt/format.h>

#include <algorithm>

#include "formats/sheet_figures.hpp"
#include "formats/sheet_parts.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/sweep/search_effort.hpp"

namespace sweepwright::formats {
namespace {

/// The number of a source in the list under the working; adds it when it is new.
std::size_t number_of(const std::string& source, std::vector<std::string>& sources) {
  auto found = std::find(sources.begin(), sources.end(), source);
  if (found == sources.end()) found = sources.insert(sources.end(), source);
  return static_cast<std::size_t>(found - sources.begin()) + 1;
}

void add_sweep_width(Sheet& sheet, const sweep::SweepWidth& width,
                     std::vector<std::string>& sources) {
  for (const sweep::WorkingLine& line : width.working) {
    if (line.value.empty()) continue;  // a remark: nothing is worked out there
    std::string expression = line.expression;
    if (!line.source.empty()) {
      expression += fmt::format(" [{}]", number_of(line.source, sources));
    }
    sheet.working.push_back({line.label, expression, line.value});
  }
}

std::string detection_expression(const plan::Mission& mission, const plan::Assignment& assignment) {
  std::string text = fmt::format("{}, C = {:.3f}", sweep::formula(mission.detection_law),
                                 assignment.coverage.value());
  if (assignment.pattern.kind == pattern::Kind::sector) {
    text = fmt::format("mean over the disc of {}, C = {:.3f} half way out",
                       sweep::formula(mission.detection_law), assignment.coverage.value());
  }
  if (assignment.searched_share < 1) {
    text = fmt::format("{:.3f} of the sector searched x ({})", assignment.searched_share, text);
  }
  return text;
}

void add_way(Sheet& sheet, const std::string& name, const plan::Transit& way) {
  if (!way.triangle) return;
  sheet.working.push_back(
      {name,
       fmt::format("{} / {} over the ground", nautical_miles_text(way.line.length),
                   format_speed(way.line.length / way.time, SpeedUnit::knot, 1)),
       format_duration(way.time)});
}

void add_endurance(Sheet& sheet, const flight::EnduranceUse& use) {
  sheet.working.push_back(
      {"Endurance needed", "ways, pattern and reserve", format_duration_minutes(use.needed)});
  if (!use.bingo) return;
  sheet.working.push_back({"Bingo", "latest time to leave for the base, after departure",
                           format_duration_minutes(*use.bingo)});
}

}  // namespace

std::vector<std::string> add_working(Sheet& sheet, const plan::Mission& mission,
                                     const plan::Assignment& assignment) {
  std::vector<std::string> sources;
  const plan::SearchUnit& unit = assignment.unit;
  add_sweep_width(sheet, assignment.sweep_width, sources);
  sheet.working.push_back(
      {"Coverage C",
       fmt::format("W {} / S {}",
                   format_length(assignment.sweep_width.width, LengthUnit::nautical_mile, 3),
                   format_length(assignment.spacing, LengthUnit::nautical_mile, 3)),
       fmt::format("{:.3f}", assignment.coverage.value())});
  sheet.working.push_back({"POD, " + std::string(sweep::name(mission.detection_law)),
                           detection_expression(mission, assignment),
                           percent_text(assignment.probability_of_detection.value())});
  if (unit.time_away) {
    sheet.working.push_back({"On-scene endurance",
                             fmt::format("endurance {} - out {} - back {} - reserve {}",
                                         format_duration_minutes(unit.time_away->endurance),
                                         format_duration_minutes(assignment.way_out.time),
                                         format_duration_minutes(assignment.way_back.time),
                                         format_duration_minutes(unit.time_away->reserve)),
                             format_duration_minutes(assignment.on_scene_endurance)});
  }
  sheet.working.push_back({"Search time",
                           fmt::format("on-scene endurance {} x {:.2f}",
                                       format_duration_minutes(assignment.on_scene_endurance),
                                       sweep::kSearchShareOfOnSceneEndurance),
                           format_duration_minutes(assignment.search_time)});
  if (assignment.probability_of_containment) {
    const double contained = assignment.probability_of_containment->value();
    const double detected = assignment.probability_of_detection.value();
    sheet.working.push_back(
        {"POS of the sector",
         fmt::format("POC {:.1f} % x POD {}", 100 * contained, percent_text(detected)),
         fmt::format("{:.1f} %", 100 * contained * detected)});
  }
  sheet.working.push_back({"Pattern time", "as flown: legs and turns of the leg table",
                           format_duration(assignment.pattern_time)});
  add_way(sheet, "Base to CSP", assignment.way_out);
  add_way(sheet, "End to base", assignment.way_back);
  if (assignment.endurance_use) add_endurance(sheet, *assignment.endurance_use);
  return sources;
}

}  // namespace sweepwright::formats
