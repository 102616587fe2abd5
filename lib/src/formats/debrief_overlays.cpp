#include "sweepwright/formats/debrief_overlays.hpp"

#include <fmt/format.h>

#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/csv_writer.hpp"
#include "sweepwright/formats/geojson_writer.hpp"
#include "sweepwright/formats/kml_writer.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

constexpr Colour kHoleColour{201, 49, 0};
constexpr Colour kPlaceColour{26, 26, 26};
constexpr Colour kOtherColour{96, 96, 96};
constexpr std::uint8_t kHoleOpacity = 60;

PropertyValue time_value(std::optional<Instant> time) {
  if (!time) return std::monostate();
  return format_utc(std::chrono::floor<std::chrono::seconds>(*time));
}

/// Stretches of one use that follow each other without a gap.
struct TrackPart {
  std::string name;
  debrief::Use use{};
  bool counts = false;
  Path path;
  std::optional<Instant> from;
  std::optional<Instant> to;
};

std::vector<TrackPart> track_parts(const debrief::Sortie& sortie, const std::string& callsign) {
  std::vector<TrackPart> parts;
  for (const debrief::FlownPiece& piece : sortie.pieces) {
    if (parts.empty() || parts.back().use != piece.use ||
        parts.back().path.back() != piece.swept.from) {
      parts.push_back({fmt::format("{}: {}", callsign, debrief::name(piece.use)),
                       piece.use,
                       piece.swept.sweep_width > Length(),
                       {piece.swept.from},
                       piece.from,
                       {}});
    }
    parts.back().path.push_back(piece.swept.to);
    parts.back().to = piece.to;
  }
  return parts;
}

const plan::Assignment& assignment_of(const DebriefOutcome& outcome,
                                      const debrief::SortieResult& result) {
  return outcome.plan.assignments[result.sortie.input.assignment];
}

std::vector<Property> sector_properties(const DebriefOutcome& outcome, std::size_t index) {
  const plan::Assignment& assignment = outcome.plan.assignments[index];
  const debrief::SectorResult& sector = outcome.debriefing.sectors[index];
  return {{"part", std::string("sector")},
          {"name", assignment.sector_name},
          {"callsign", assignment.unit.callsign},
          {"pod_planned", sector.planned_pod.value()},
          {"pod", sector.pod.value()},
          {"poc_before", sector.containment_before},
          {"poc_after", sector.containment_after}};
}

std::vector<Property> hole_properties(const debrief::Hole& hole, const std::string& sector) {
  return {{"part", std::string("hole")},
          {"sector", sector},
          {"area_m2", hole.area.square_metres()},
          {"mean_pod", hole.mean_pod}};
}

std::vector<Property> sighting_properties(const CrewSighting& one) {
  std::vector<Property> properties{{"part", std::string("sighting")},
                                   {"callsign", one.callsign},
                                   {"sector", one.sector},
                                   {"seen", one.sighting.seen},
                                   {"done", one.sighting.done}};
  if (one.sighting.time) properties.push_back({"time", format_utc(*one.sighting.time)});
  return properties;
}

std::vector<Property> cell_properties(const debrief::Debriefing& found, std::size_t i) {
  const grid::Cell& cell = found.after.cells[i];
  return {{"part", std::string("cell")},
          {"cell", cell.name},
          {"system", std::string(cell.system)},
          {"level", std::string(cell.level.name)},
          {"pod", found.cell_pod[i]},
          {"probability_before", found.before.probability[i]},
          {"probability", found.after.probability[i]},
          {"next_coverage", found.next ? found.next->coverages[i] : 0.0}};
}

Geometry ground_of(const grid::Cell& cell) {
  if (cell.box) return *cell.box;
  return cell.region;
}

std::string sector_text(const DebriefOutcome& outcome, std::size_t index) {
  const debrief::SectorResult& sector = outcome.debriefing.sectors[index];
  return fmt::format("{}: probability of detection {:.0f} % planned, {:.0f} % achieved",
                     outcome.plan.assignments[index].unit.callsign,
                     100 * sector.planned_pod.value(), 100 * sector.pod.value());
}

std::string crew_style_id(std::size_t assignment) {
  return fmt::format("crew-{}", assignment + 1);
}

std::vector<KmlStyle> styles(const DebriefOutcome& outcome) {
  std::vector<KmlStyle> all{
      {.id = "hole",
       .line = kHoleColour,
       .line_width_pixels = 2,
       .fill = Colour{kHoleColour.red, kHoleColour.green, kHoleColour.blue, kHoleOpacity}},
      {.id = "sighting", .line = kHoleColour, .fill = {}},
      {.id = "sector", .line = kPlaceColour, .line_width_pixels = 3, .fill = {}},
      {.id = "cell", .line = kOtherColour, .line_width_pixels = 1, .fill = {}},
      {.id = "other", .line = kOtherColour, .line_width_pixels = 1, .fill = {}}};
  for (std::size_t i = 0; i < outcome.plan.assignments.size(); ++i) {
    all.push_back(
        {.id = crew_style_id(i), .line = crew_style(i).colour, .line_width_pixels = 2, .fill = {}});
  }
  return all;
}

Placemark placemark(std::string name, std::string description, std::string style, Geometry geometry,
                    std::vector<Property> properties = {}) {
  Placemark mark;
  mark.name = std::move(name);
  mark.description = std::move(description);
  mark.style_id = std::move(style);
  mark.geometry = std::move(geometry);
  mark.properties = std::move(properties);
  return mark;
}

void write_kml_tracks(KmlWriter& writer, const DebriefOutcome& outcome) {
  for (const debrief::SortieResult& result : outcome.debriefing.sorties) {
    const plan::Assignment& assignment = assignment_of(outcome, result);
    writer.open_folder(fmt::format("Track of {}", assignment.unit.callsign),
                       fmt::format("Sector {}", assignment.sector_name));
    for (TrackPart& part : track_parts(result.sortie, assignment.unit.callsign)) {
      writer.placemark(placemark(
          part.name, "", part.counts ? crew_style_id(result.sortie.input.assignment) : "other",
          std::move(part.path)));
    }
    writer.close_folder();
  }
}

}  // namespace

void write_debrief_geojson(Sink& sink, const DebriefOutcome& outcome,
                           const Provenance& provenance) {
  const debrief::Debriefing& found = outcome.debriefing;
  const std::vector<Property> members{{"name", "Debrief: " + outcome.plan.mission.incident.name},
                                      {"detection_law", std::string(sweep::name(found.law))},
                                      {"pos", found.success},
                                      {"cumulative_pos", found.after.cumulative_success},
                                      {"outside", found.after.outside},
                                      {"provenance", provenance_json(provenance)}};
  GeoJsonWriter writer(sink, members);
  for (std::size_t i = 0; i < found.sectors.size(); ++i) {
    writer.feature(outcome.plan.assignments[i].sector, sector_properties(outcome, i));
  }
  for (const debrief::SortieResult& result : found.sorties) {
    const plan::Assignment& assignment = assignment_of(outcome, result);
    for (TrackPart& part : track_parts(result.sortie, assignment.unit.callsign)) {
      writer.feature(std::move(part.path),
                     std::vector<Property>{{"part", std::string("track")},
                                           {"callsign", assignment.unit.callsign},
                                           {"sector", assignment.sector_name},
                                           {"use", std::string(debrief::name(part.use))},
                                           {"counts", part.counts},
                                           {"from", time_value(part.from)},
                                           {"to", time_value(part.to)}});
    }
  }
  for (std::size_t i = 0; i < outcome.holes.size(); ++i) {
    for (const debrief::Hole& hole : outcome.holes[i]) {
      writer.feature(hole.region, hole_properties(hole, outcome.plan.assignments[i].sector_name));
    }
  }
  for (const CrewSighting& one : sightings(outcome)) {
    const Geometry place =
        one.sighting.position ? Geometry(*one.sighting.position) : Geometry(std::monostate());
    writer.feature(place, sighting_properties(one));
  }
  for (std::size_t i = 0; i < found.after.cells.size(); ++i) {
    writer.feature(ground_of(found.after.cells[i]), cell_properties(found, i));
  }
  writer.finish();
}

void write_debrief_kml(Sink& sink, const DebriefOutcome& outcome, const Provenance& provenance) {
  const debrief::Debriefing& found = outcome.debriefing;
  KmlWriter writer(sink, {.name = "Debrief: " + outcome.plan.mission.incident.name,
                          .description = provenance_text(provenance),
                          .styles = styles(outcome)});
  writer.open_folder("Sectors");
  for (std::size_t i = 0; i < found.sectors.size(); ++i) {
    writer.placemark(placemark(outcome.plan.assignments[i].sector_name, sector_text(outcome, i),
                               "sector", outcome.plan.assignments[i].sector));
  }
  writer.close_folder();
  writer.open_folder("Sightings");
  std::size_t number = 0;
  for (const CrewSighting& one : sightings(outcome)) {
    ++number;
    if (!one.sighting.position) continue;
    writer.placemark(placemark(fmt::format("{} {}", number, one.callsign),
                               fmt::format("{}\n{}", one.sighting.seen, one.sighting.done),
                               "sighting", *one.sighting.position));
  }
  writer.close_folder();
  writer.open_folder("Holes", fmt::format("Ground with a probability of detection under {:.0f} %",
                                          100 * outcome.hole_below.value()));
  for (std::size_t i = 0; i < outcome.holes.size(); ++i) {
    for (const debrief::Hole& hole : outcome.holes[i]) {
      writer.placemark(
          placemark(fmt::format("{:.2f} NM2", hole.area.square_nautical_miles()),
                    fmt::format("Sector {}, mean probability of detection {:.0f} %",
                                outcome.plan.assignments[i].sector_name, 100 * hole.mean_pod),
                    "hole", hole.region));
    }
  }
  writer.close_folder();
  write_kml_tracks(writer, outcome);
  writer.open_folder("Cells", "Probability of detection, and of containment after the search");
  for (std::size_t i = 0; i < found.after.cells.size(); ++i) {
    writer.placemark(placemark(found.after.cells[i].name, "", "cell",
                               ground_of(found.after.cells[i]), cell_properties(found, i)));
  }
  writer.close_folder();
  writer.finish();
}

void write_debrief_cells(Sink& sink, const DebriefOutcome& outcome) {
  const debrief::Debriefing& found = outcome.debriefing;
  CsvWriter writer(sink,
                   std::vector<std::string>{"cell", "system", "level", "area_m2", "pod",
                                            "probability_before", "probability", "next_coverage"});
  for (std::size_t i = 0; i < found.after.cells.size(); ++i) {
    const grid::Cell& cell = found.after.cells[i];
    writer.row(std::vector<PropertyValue>{
        cell.name, std::string(cell.system), std::string(cell.level.name),
        found.after.area[i].square_metres(), found.cell_pod[i], found.before.probability[i],
        found.after.probability[i], found.next ? found.next->coverages[i] : 0.0});
  }
}

}  // namespace sweepwright::formats
