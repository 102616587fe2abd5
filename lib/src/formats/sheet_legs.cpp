#include <fmt/format.h>

#include <algorithm>

#include "formats/sheet_figures.hpp"
#include "formats/sheet_parts.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::formats {
namespace {

std::string leg_label(std::size_t number, pattern::LegKind kind) {
  std::string label = std::to_string(number);
  if (kind == pattern::LegKind::cross) label += " x";
  if (kind == pattern::LegKind::transit) label += " t";
  return label;
}

}  // namespace

void add_legs(Sheet& sheet, const plan::Assignment& assignment) {
  Length distance;
  Duration time{};
  std::size_t number = 0;
  bool transit = false;
  bool cross = false;
  for (const pattern::Leg& leg : assignment.pattern.legs) {
    distance += leg.line.length;
    time += leg_time(assignment, leg);
    transit = transit || leg.kind == pattern::LegKind::transit;
    cross = cross || leg.kind == pattern::LegKind::cross;
    sheet.legs.push_back(
        {leg_label(++number, leg.kind), leg.kind, track_number(leg.line),
         nautical_miles_number(leg.line.length), format_duration(leg_time(assignment, leg)),
         nautical_miles_number(distance), format_duration(time), position_text(leg.to)});
  }
  sheet.legs_note = "Why this pattern: " + assignment.pattern_reason + ".\nSearch legs bold.";
  if (cross) sheet.legs_note += " x: cross leg to the next search leg.";
  if (transit) sheet.legs_note += " t: transit leg over ground that is not searched.";
  sheet.legs_note += " Leg 1 starts at the CSP. Tracks TRUE.";
  sheet.leg_totals =
      fmt::format("Total {}, {} at {}, without wind and turns. Search legs alone {}.",
                  nautical_miles_text(distance), format_duration(time),
                  knots_text(assignment.unit.search_speed),
                  nautical_miles_text(search_distance(assignment.pattern)));
}

}  // namespace sweepwright::formats
