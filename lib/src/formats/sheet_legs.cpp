#include <fmt/format.h>

#include <cmath>

#include "formats/sheet_figures.hpp"
#include "formats/sheet_parts.hpp"
#include "sweepwright/base/quantity_text.hpp"

namespace sweepwright::formats {
namespace {

std::string leg_label(const flight::FlownLeg& leg, bool first) {
  if (!leg.searching) return first ? "out" : "back";
  std::string label = leg.drawn ? std::to_string(*leg.drawn) : "";
  if (leg.leg.kind == pattern::LegKind::cross) label += " x";
  if (leg.leg.kind == pattern::LegKind::transit) label += " t";
  return label;
}

std::string heading_text(const flight::FlownLeg& leg) {
  const auto heading = leg.magnetic_heading();
  if (!heading) return "";
  return fmt::format("{:03}", std::lround(heading->degrees()) % 360);
}

std::string fuel_text(const std::optional<flight::FuelFlow>& flow, Duration time) {
  return flow ? fmt::format("{:.1f}", (*flow * time).amount) : "";
}

std::string legs_note(const plan::Assignment& assignment) {
  const flight::FlownPattern& flown = assignment.flown;
  bool transit = false;
  bool cross = false;
  for (const flight::FlownLeg& leg : flown.legs) {
    transit = transit || (leg.searching && leg.leg.kind == pattern::LegKind::transit);
    cross = cross || leg.leg.kind == pattern::LegKind::cross;
  }
  std::string note = "Why this pattern: " + assignment.pattern_reason + ".\nSearch legs bold.";
  if (cross) note += " x: cross leg to the next search leg.";
  if (transit) note += " t: transit leg over ground that is not searched.";
  note +=
      " out, back: from and to the base. Tracks TRUE, headings MAGNETIC. Each row counts the turn "
      "at its end; totals count from leaving the base. A leg ends at the place of its turn.";
  if (flown.variation) {
    note += " Variation " + magnetic::format_variation(*flown.variation) + ".";
  }
  return note;
}

}  // namespace

void add_legs(Sheet& sheet, const plan::Mission& mission, const plan::Assignment& assignment) {
  const flight::FlownPattern& flown = assignment.flown;
  const std::optional<flight::FuelFlow>& flow = assignment.unit.fuel_flow;
  if (flow) sheet.leg_heads.fuel = fmt::format("Fuel {}", flight::symbol(flow->unit));
  for (const flight::FlownLeg& leg : flown.legs) {
    const Length distance = leg.distance + (leg.turn ? leg.turn->distance : Length());
    sheet.legs.push_back(
        {leg_label(leg, sheet.legs.empty()),
         leg.searching && leg.leg.kind == pattern::LegKind::search, track_number(leg.leg.line),
         heading_text(leg), fmt::format("{:.0f}", leg.triangle.ground_speed.knots()),
         nautical_miles_number(distance), format_duration(leg.end - leg.start),
         clock_seconds_text(flown.depart, leg.end, mission.incident.offset_from_utc),
         format_duration(leg.end), fuel_text(flow, leg.end), position_text(leg.leg.to)});
  }
  sheet.legs_note = legs_note(assignment);
  sheet.leg_totals = fmt::format(
      "In the area {}, away {} and {}. Search legs {}.", format_duration(assignment.pattern_time),
      format_duration(flown.total_time), nautical_miles_text(flown.total_distance),
      nautical_miles_text(search_distance(assignment.pattern)));
}

}  // namespace sweepwright::formats
