#include <fmt/format.h>

#include "formats/map_corners.hpp"
#include "formats/map_graticule.hpp"
#include "formats/map_layers.hpp"
#include "formats/map_style.hpp"
#include "formats/map_terrain.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/map.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kRoomRoundSector = 5;  // mm, for the corners' letters
/// The base comes onto the map when the sector stays at least this share of its size.
constexpr double kLeastShareWithBase = 0.8;

MapView view_of(const plan::Assignment& assignment, const PaperBox& frame) {
  const LocalPlane plane = local_plane(assignment.sector);
  const PaperBox room = grown(frame, -kRoomRoundSector);
  std::vector<Position> shown = corners(assignment.sector);
  const MapView close(plane, shown, frame, room);
  shown.push_back(assignment.unit.base.position);
  const MapView wide(plane, shown, frame, room);
  return wide.mm_per_metre() >= kLeastShareWithBase * close.mm_per_metre() ? wide : close;
}

/// What a map shows that another may not, for its legend.
struct Shown {
  bool base = true;
  bool datum = false;
  bool terrain = false;
};

std::vector<LegendItem> legend_items(const CrewStyle& crew, Shown shown) {
  std::vector<LegendItem> items;
  items.push_back(legend_symbol("commence search point", level_start_symbol));
  items.push_back(legend_symbol("end of pattern", end_symbol));
  items.push_back({"search leg, number", [colour = crew.colour](PaperBox box) {
                     const double y = middle(box).y_mm;
                     Elements out{{Line{{{box.left_mm, y}, {box.right_mm, y}},
                                        Stroke{colour, style::kSearchLeg, {}}}}};
                     out.push_back(arrowhead({box.right_mm, y}, 90, 2, colour));
                     out.push_back({Text{{box.left_mm + 2, y},
                                         "1",
                                         style::kSmallText,
                                         TextAnchor::middle,
                                         true,
                                         0,
                                         style::kInk,
                                         style::kHalo}});
                     return out;
                   }});
  items.push_back(
      legend_line("turns, cross legs", Stroke{crew.colour, 0.6 * style::kSearchLeg, {}}));
  items.push_back({"sector, corner A", [](PaperBox box) {
                     const double y = middle(box).y_mm;
                     return Elements{{Line{{{box.left_mm, y}, {box.right_mm - 1.8, y}},
                                           Stroke{style::kInk, style::kSectorOutline, {}}}},
                                     {Text{{box.right_mm, y},
                                           "A",
                                           style::kSmallText,
                                           TextAnchor::end,
                                           true,
                                           0,
                                           style::kInk,
                                           0}}};
                   }});
  items.push_back(
      legend_line("next sector", Stroke{style::kFaint, style::kNeighbourOutline, {2, 1}}));
  items.push_back(legend_line("grid cell", Stroke{style::kFaint, style::kCellLine, {}}));
  if (shown.base) {
    items.push_back(legend_symbol("base", base_symbol));
  } else {
    items.push_back(legend_way_to_base("to base from CSP"));
  }
  if (shown.datum) items.push_back(legend_symbol("datum", datum_symbol));
  if (shown.terrain) items.push_back(legend_terrain_shading());
  return items;
}

/// Letters just outside the corners.
Elements corner_letters(const MapView& view, const Region& sector, LabelPlacer& placer) {
  constexpr double kRadius = 0.9;
  Elements out;
  const PaperArea area = view.to_paper(sector);
  std::size_t index = 0;
  for (const CornerRing& ring : sector_corners(sector).rings) {
    for (const Position& corner : ring.corners) {
      const PaperPoint at = view.to_paper(corner);
      Text text{at,
                corner_letter(index++),
                style::kSymbolName,
                TextAnchor::middle,
                true,
                0,
                style::kInk,
                style::kHalo};
      std::vector<PaperPoint> outside;
      for (const PaperPoint& place : places_round(at, kRadius, label_size(text))) {
        if (!contains(area, place)) outside.push_back(place);
      }
      append(out, placed(text, outside, placer));
    }
  }
  return out;
}

Elements neighbour_names(const MapView& view, const plan::Plan& plan, std::size_t own,
                         LabelPlacer& placer) {
  Elements out;
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    if (i == own) continue;
    const plan::Assignment& other = plan.assignments[i];
    const PaperArea area = view.to_paper(other.sector);
    const auto at = visible_middle(area, view.frame());
    if (!at) continue;
    for (const std::string& name :
         {other.sector_name + " " + fitted(other.unit.callsign, style::kNeighbourName, false, 35),
          other.sector_name}) {
      const Text text{*at,   name, style::kNeighbourName, TextAnchor::middle,
                      false, 0,    style::kQuiet,         style::kHalo};
      Elements label =
          placed(text, places_inside(area, view.frame(), label_size(text), *at), placer);
      if (label.empty()) continue;
      append(out, std::move(label));
      break;
    }
  }
  return out;
}

/// Name of sector and crew in a box, in the corner of the frame where it covers least.
Elements name_plate(const MapView& view, const plan::Assignment& assignment, LabelPlacer& placer) {
  const PaperBox& frame = view.frame();
  Text text{
      {}, assignment.sector_name, style::kSectorName, TextAnchor::middle, true, 0, style::kInk, 0};
  const PaperSize needed = label_size(text);
  const PaperSize size{needed.width_mm + 2, needed.height_mm + 0.6};
  const double x = size.width_mm / 2 + 0.6;
  const double y = size.height_mm / 2 + 0.6;
  const PaperPoint at = placer.place_anyway(size, {{frame.left_mm + x, frame.top_mm + y},
                                                   {frame.left_mm + x, frame.bottom_mm - y},
                                                   {frame.right_mm - x, frame.bottom_mm - y},
                                                   {frame.right_mm - x, frame.top_mm + y}});
  text.at = at;
  const PaperBox box = box_round(at, size);
  return {{Shape{{{{box.left_mm, box.top_mm},
                   {box.right_mm, box.top_mm},
                   {box.right_mm, box.bottom_mm},
                   {box.left_mm, box.bottom_mm}}},
                 Stroke{style::kInk, style::kFrameLine, {}},
                 kWhite,
                 {}}},
          {text}};
}

std::string description(const plan::Assignment& assignment) {
  return fmt::format(
      "Sector {} with the {} search legs of {} from the commence search point to the end, the "
      "cells of the grid, neighbouring sectors, graticule, scale bars and true north.",
      assignment.sector_name, pattern::search_leg_count(assignment.pattern),
      assignment.unit.callsign);
}

}  // namespace

Drawing draw_sector_map(const plan::Plan& plan, std::size_t index, PaperSize size) {
  if (index >= plan.assignments.size()) {
    throw Error(ErrorCode::value, fmt::format("there is no assignment {}, only {}", index + 1,
                                              plan.assignments.size()));
  }
  const plan::Assignment& assignment = plan.assignments[index];
  const CrewStyle crew = crew_style(index);
  const auto& datum = plan.mission.datum;
  const auto& elevation = plan.mission.elevation;
  std::vector<std::vector<LegendItem>> legends;
  for (const bool base : {false, true}) {
    legends.push_back(legend_items(crew, {base, false, elevation.has_value()}));
    legends.push_back(legend_items(crew, {base, datum.has_value(), elevation.has_value()}));
  }
  const MapPaper paper = map_paper(size, legends, 0);
  const MapView view = view_of(assignment, paper.frame);
  const PaperBox inside = grown(paper.frame, -0.6);
  Graticule grid_lines = graticule(view);

  // Below everything: what does not move.
  Elements under;
  if (elevation) under = terrain_shading(view, elevation->model);
  const bool terrain_shown = !under.empty();
  append(under, std::move(grid_lines.lines));
  append(under, cell_lines(view, plan.cells));
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    if (i == index) continue;
    under.push_back({Shape{view.to_paper(plan.assignments[i].sector),
                           Stroke{style::kFaint, style::kNeighbourOutline, {2, 1}},
                           {},
                           {}}});
  }
  const PaperPoint start = view.to_paper(commence_search_point(assignment.pattern));
  const PaperPoint end = view.to_paper(assignment.pattern.legs.back().to);
  const PaperPoint base_at = view.to_paper(assignment.unit.base.position);
  Elements own;
  own.push_back({Line{{base_at, start}, Stroke{style::kQuiet, 0.3, {0.4, 1.1}}}});
  append(own, guide_lines(view, assignment.pattern));
  append(own, flown_legs(view, assignment, {crew.colour, style::kSearchLeg, {}, true}));
  own.push_back({Shape{
      view.to_paper(assignment.sector), Stroke{style::kInk, style::kSectorOutline, {}}, {}, {}}});

  LabelPlacer placer(inside);
  for (const pattern::Leg& leg : assignment.pattern.legs) {
    placer.spare({view.to_paper(leg.from), view.to_paper(leg.to)});
  }
  for (PaperLine ring : view.to_paper(assignment.sector)) {
    ring.push_back(ring.front());
    placer.spare(ring);
  }
  placer.spare({base_at, start});
  Elements over;
  placer.keep_clear(box_round(start, {2 * kStartRadius, 2 * kStartRadius}));
  placer.keep_clear(box_round(end, {2 * kEndRadius, 2 * kEndRadius}));
  NorthArrows norths(assignment.flown.variation);
  norths.place(paper.frame, placer);
  append(over, name_plate(view, assignment, placer));
  const bool datum_shown =
      datum && contains(grown(paper.frame, -kDatumRadius), view.to_paper(datum->position));
  if (datum_shown) {
    const PaperPoint at = view.to_paper(datum->position);
    placer.keep_clear(box_round(at, {2 * kDatumRadius, 2 * kDatumRadius}));
    append(over, datum_symbol(at));
    append(over, named_beside(at, kDatumRadius, "datum", false, placer));
  }
  append(over, end_symbol(end));
  append(over, start_symbol(start, first_track_on_paper_deg(view, assignment.pattern)));
  append(over, corner_letters(view, assignment.sector, placer));
  append(over, named_beside(start, kStartRadius, "CSP", true, placer));
  append(over, named_beside(end, kEndRadius, "END", true, placer));
  append(over, base(view, assignment.unit.base, commence_search_point(assignment.pattern), placer));
  append(over, neighbour_names(view, plan, index, placer));
  append(over, leg_numbers(view, assignment.pattern, placer));
  append(under, cell_names(view, assignment.cells, view.to_paper(assignment.sector), placer));
  append(under, std::move(own));

  Drawing drawing;
  drawing.size = size;
  drawing.title = fmt::format("Map of sector {}", assignment.sector_name);
  drawing.description = description(assignment);
  drawing.elements.push_back({Group{std::move(under), paper.frame}});
  drawing.elements.push_back({Group{std::move(over), paper.frame}});
  const bool base_shown = contains(grown(paper.frame, -kBaseRadius), base_at);
  append(drawing.elements, furniture(view, paper, norths, std::move(grid_lines.labels),
                                     legend_items(crew, {base_shown, datum_shown, terrain_shown})));
  return drawing;
}

}  // namespace sweepwright::formats
