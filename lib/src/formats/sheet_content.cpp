#include <fmt/format.h>

#include <algorithm>

#include "formats/map_corners.hpp"
#include "formats/sheet_figures.hpp"
#include "formats/sheet_parts.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/sheet.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

/// A longer list would push the legs off the page.
constexpr std::size_t kMostCellsListed = 36;
constexpr int kSightingRows = 5;
/// Of the map in the HTML page, which gives it what is free there.
constexpr PaperSize kMapSize{117, 150};

std::vector<SheetField> heading(const plan::Incident& incident) {
  return {{"Incident Name", incident.name},
          {"Prepared by", incident.prepared_by},
          {"Operational Period",
           local_period_text(incident.operational_period, incident.offset_from_utc) + "\n" +
               utc_period_text(incident.operational_period)},
          {"Incident Number", incident.number}};
}

std::vector<SheetField> key_figures(const plan::Assignment& assignment) {
  const pattern::Pattern& pattern = assignment.pattern;
  return {
      {"Commence search point (CSP)", position_text(commence_search_point(pattern))},
      {"First leg, first turn",
       fmt::format("{}, {}", format_direction(pattern.legs.front().line.start_track),
                   pattern::name(pattern.first_turn))},
      {"Track spacing", spacing_text(assignment.spacing)},
      {"Height above surface",
       assignment.unit.search_height ? feet_text(*assignment.unit.search_height) : "on surface"},
      {"Search speed", knots_text(assignment.unit.search_speed)},
      {"Pattern, of search time",
       fmt::format("{} of {}", format_duration_minutes(assignment.pattern_time),
                   format_duration_minutes(assignment.search_time))}};
}

/// `, 3 persons`; empty when the number is not known.
std::string persons_text(std::optional<int> persons) {
  if (!persons) return "";
  return fmt::format(", {} {}", *persons, *persons == 1 ? "person" : "persons");
}

SheetBlock resources(const plan::Assignment& assignment) {
  const plan::SearchUnit& unit = assignment.unit;
  const std::string platform(sweep::name(unit.platform));
  return {"Resources Assigned",
          {{"Type", (unit.type.empty() ? platform : unit.type + " (" + platform + ")") +
                        persons_text(unit.crew)},
           {"Leader", unit.leader},
           {"Base", unit.base.name + "\n" + position_text(unit.base.position)},
           {"Base to CSP", fmt::format("{}, {}, {}", track_text(assignment.way_out.line),
                                       nautical_miles_text(assignment.way_out.line.length),
                                       format_duration(assignment.way_out.time))}},
          {}};
}

std::string cells_text(const plan::GridChoice& grid, const plan::Assignment& assignment) {
  const std::size_t listed = std::min(assignment.cells.size(), kMostCellsListed);
  std::string text = grid.system + " " + grid.level + ":";
  for (std::size_t i = 0; i < listed; ++i) text += " " + assignment.cells[i].name;
  if (listed < assignment.cells.size()) {
    text += fmt::format(" and {} more, on the overlay", assignment.cells.size() - listed);
  }
  return text;
}

/// One corner a line, with the letter that the map shows; holes as such.
std::string corners_text(const SectorCorners& corners) {
  std::string text;
  std::size_t index = 0;
  for (const CornerRing& ring : corners.rings) {
    if (ring.hole) text += "\nnot to be searched, inside:";
    for (const Position& corner : ring.corners) {
      text += fmt::format("{}{}  {}", text.empty() ? "" : "\n", corner_letter(index++),
                          position_text(corner));
    }
  }
  if (corners.tolerance > kCornerTolerance) {
    text += fmt::format("\n(edge within {} of these lines)",
                        format_length(corners.tolerance, LengthUnit::metre, 0));
  }
  return text;
}

SheetBlock work_assignment(const plan::Mission& mission, const plan::Assignment& assignment) {
  const plan::SearchObject& object = mission.object;
  const pattern::KindInfo& kind = pattern::info(assignment.pattern.kind);
  const int search_legs = search_leg_count(assignment.pattern);
  return {"Work Assignment",
          {{"Search object", object.table_name + persons_text(object.persons_on_board)},
           {"Description", object.description},
           {"Sector", assignment.sector_name + ", " + area_text(area(assignment.sector))},
           {"Cells", cells_text(mission.grid, assignment)},
           {"Corners", corners_text(sector_corners(assignment.sector))},
           {"Pattern", fmt::format("{} {}, {} search {}", kind.designator, kind.title, search_legs,
                                   search_legs == 1 ? "leg" : "legs")},
           {"Coverage, POD", fmt::format("{:.2f}, {} ({} law)", assignment.coverage.value(),
                                         percent_text(assignment.probability_of_detection.value()),
                                         sweep::name(mission.detection_law))}},
          {}};
}

/// `Sun 05:36 to 20:31, civil twilight 05:03 to 21:04 local`.
std::string sun_text(const flight::Daylight& day, std::chrono::minutes offset_from_utc) {
  const auto span = [&](const flight::SunTimes& times, std::string_view above,
                        std::string_view below) {
    if (times.state == flight::SunState::above) return std::string(above);
    if (times.state == flight::SunState::below) return std::string(below);
    const auto clock = [&](const std::optional<TimePoint>& time) {
      return time ? clock_text(*time, offset_from_utc) : std::string("--");
    };
    return clock(times.rise) + " to " + clock(times.set);
  };
  return "Sun " + span(day.sun, "up all day", "below the horizon all day") + ", civil twilight " +
         span(day.civil_twilight, "all night", "none") + " (local)";
}

SheetBlock conditions(const plan::Mission& mission, const plan::Assignment& assignment) {
  const plan::Conditions& conditions = mission.conditions;
  std::string text =
      "Visibility " + format_length(conditions.visibility, LengthUnit::nautical_mile, 0);
  if (conditions.wind_speed) text += ", wind " + knots_text(*conditions.wind_speed);
  if (conditions.wind_from) {
    text += (conditions.wind_speed ? " from " : ", wind from ") +
            format_direction(*conditions.wind_from);
  }
  if (conditions.sea_height) {
    text += ", sea " + format_length(*conditions.sea_height, LengthUnit::metre, 1);
  }
  if (conditions.terrain) text += ", " + std::string(sweep::name(*conditions.terrain));
  SheetBlock block{"Conditions", {}, {text}};
  if (!conditions.weather.empty()) block.lines.push_back(conditions.weather);
  block.lines.push_back(sun_text(assignment.light.day, mission.incident.offset_from_utc));
  return block;
}

SheetBlock communications(const std::vector<plan::Channel>& channels) {
  SheetBlock block{"Communications", {}, {}};
  for (const plan::Channel& channel : channels) {
    block.fields.push_back({channel.name, channel.frequency});
  }
  if (channels.empty()) block.fields = {{"Primary", ""}, {"Secondary", ""}};
  return block;
}

SheetBlock special_instructions(const plan::Mission& mission, const plan::Assignment& assignment) {
  SheetBlock block{"Special Instructions", {}, {}};
  for (const std::string& hazard : mission.hazards) block.lines.push_back("HAZARD: " + hazard);
  for (const std::string& remark : assignment.unit.remarks) block.lines.push_back(remark);
  for (const std::string& remark : assignment.remarks) block.lines.push_back(remark);
  return block;
}

std::vector<SheetBlankRow> debrief_blanks() {
  std::vector<SheetBlankRow> rows{
      {{"Left base", "On scene", "Off scene", "Back at base"}, 1},
      {{"Visibility met", "Wind, weather, light met", "Height flown", "Speed flown"}, 1},
      {{"Legs completed", "Legs not completed, and why"}, 1},
      {{"Ground not seen well, and why: cloud, shadow, glare, trees, sea"}, 1}};
  for (int i = 1; i <= kSightingRows; ++i) {
    rows.push_back(
        {{fmt::format("Sighting {}: time, position", i), "What was seen, what was done"}, 1});
  }
  rows.push_back({{"Own estimate of coverage: poor / fair / good",
                   "Crew: fresh / tired / very tired", "Signature, date, time"},
                  1});
  return rows;
}

std::string sources_line(const std::vector<std::string>& sources) {
  std::string text = "Sources of the working:";
  for (std::size_t i = 0; i < sources.size(); ++i) {
    text += fmt::format(" [{}] {}", i + 1, sources[i]);
  }
  return text;
}

}  // namespace

Sheet make_sheet(const plan::Plan& plan, std::size_t index, const Provenance& provenance) {
  if (index >= plan.assignments.size()) {
    throw Error(ErrorCode::value, fmt::format("there is no assignment {}, only {}", index + 1,
                                              plan.assignments.size()));
  }
  const plan::Mission& mission = plan.mission;
  const plan::Assignment& assignment = plan.assignments[index];
  Sheet sheet;
  sheet.sector = assignment.sector_name;
  sheet.callsign = assignment.unit.callsign;
  sheet.title = "Sector " + sheet.sector + ", " + sheet.callsign;
  sheet.heading = heading(mission.incident);
  sheet.key_figures = key_figures(assignment);
  sheet.assignment = {work_assignment(mission, assignment), resources(assignment)};
  sheet.working_title = "Sweep width, coverage, times: the working";
  const std::vector<std::string> sources = add_working(sheet, mission, assignment);
  sheet.facts = {conditions(mission, assignment), communications(mission.channels)};
  sheet.instructions = special_instructions(mission, assignment);
  sheet.cautions.assign(kCautions.begin(), kCautions.end());
  add_legs(sheet, mission, assignment);
  add_findings(sheet, plan, assignment);
  sheet.debrief = debrief_blanks();
  sheet.origin = origin_line(provenance);
  sheet.footer = footer_lines(provenance);
  if (!sources.empty()) sheet.footer.insert(sheet.footer.begin(), sources_line(sources));
  sheet.map = draw_sector_map(plan, index, kMapSize);
  return sheet;
}

std::string write_sheet(const plan::Plan& plan, std::size_t assignment,
                        const Provenance& provenance) {
  return write_sheet_html(make_sheet(plan, assignment, provenance));
}

}  // namespace sweepwright::formats
