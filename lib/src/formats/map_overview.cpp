#include <fmt/format.h>

#include <algorithm>

#include "formats/map_graticule.hpp"
#include "formats/map_layers.hpp"
#include "formats/map_style.hpp"
#include "formats/map_terrain.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/map.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kRoomRoundArea = 4;  // mm
constexpr double kHead = 4;           // mm
/// Bases come onto the map when the area stays at least this share of its size.
constexpr double kLeastShareWithBases = 0.7;

/// The bases, each once.
std::vector<plan::NamedPlace> bases(const plan::Plan& plan) {
  std::vector<plan::NamedPlace> out;
  for (const plan::Assignment& assignment : plan.assignments) {
    const plan::NamedPlace& base = assignment.unit.base;
    const bool known = std::any_of(out.begin(), out.end(), [&](const plan::NamedPlace& other) {
      return other.position == base.position;
    });
    if (!known) out.push_back(base);
  }
  return out;
}

MapView view_of(const plan::Plan& plan, const PaperBox& frame) {
  const LocalPlane plane = local_plane(plan.area);
  const PaperBox room = grown(frame, -kRoomRoundArea);
  std::vector<Position> shown = corners(plan.area);
  const MapView close(plane, shown, frame, room);
  for (const plan::NamedPlace& base : bases(plan)) {
    std::vector<Position> more = shown;
    more.push_back(base.position);
    const MapView wider(plane, more, frame, room);
    if (wider.mm_per_metre() >= kLeastShareWithBases * close.mm_per_metre()) shown = more;
  }
  return MapView(plane, shown, frame, room);
}

LegendItem crew_item(const plan::Assignment& assignment, const CrewStyle& crew) {
  return {assignment.sector_name + " " + assignment.unit.callsign, [crew](PaperBox box) {
            const double y = middle(box).y_mm;
            return Elements{{Shape{{{{box.left_mm, y - 1.3},
                                     {box.right_mm, y - 1.3},
                                     {box.right_mm, y + 1.3},
                                     {box.left_mm, y + 1.3}}},
                                   {},
                                   {},
                                   sector_hatch(crew)}},
                            {Line{{{box.left_mm, y}, {box.right_mm, y}},
                                  Stroke{crew.colour, style::kSearchLeg, crew.dash_mm}}}};
          }};
}

/// What a map shows that another may not, for its legend.
struct Shown {
  bool base = false;
  bool far_base = false;
  bool datum = false;
  bool terrain = false;
};

std::vector<LegendItem> legend_items(const plan::Plan& plan, Shown shown) {
  std::vector<LegendItem> items;
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    items.push_back(crew_item(plan.assignments[i], crew_style(i)));
  }
  items.push_back(legend_symbol("commence search point", level_start_symbol));
  items.push_back(legend_line("search area", Stroke{style::kInk, style::kAreaOutline, {}}));
  items.push_back(legend_line("grid cell", Stroke{style::kFaint, style::kCellLine, {}}));
  if (shown.base) items.push_back(legend_symbol("base", base_symbol));
  if (shown.far_base) items.push_back(legend_way_to_base("to base from middle"));
  if (shown.datum) items.push_back(legend_symbol("datum", datum_symbol));
  if (shown.terrain) items.push_back(legend_terrain_shading());
  return items;
}

/// The legends for all that may turn out to be shown.
std::vector<std::vector<LegendItem>> all_legends(const plan::Plan& plan) {
  std::vector<std::vector<LegendItem>> legends;
  for (const bool base : {false, true}) {
    for (const bool far_base : {false, true}) {
      for (const bool datum : {false, true}) {
        if (datum && !plan.mission.datum) continue;
        legends.push_back(
            legend_items(plan, {base, far_base, datum, plan.mission.elevation.has_value()}));
      }
    }
  }
  return legends;
}

/// What the map is of, and the first of the cautions: the map is a file of its own.
Elements head(const plan::Plan& plan, const MapPaper& paper) {
  const double y = kHead / 2;
  const Text caution{{paper.frame.right_mm, y},
                     std::string(kCautions.front()),
                     style::kNeighbourName,
                     TextAnchor::end,
                     true,
                     0,
                     style::kInk,
                     0};
  const double room = paper.frame.width_mm() - bounds(caution).width_mm() - 3;
  return {{Text{{paper.frame.left_mm, y},
                fitted(plan.mission.incident.name, style::kNeighbourName, true, room),
                style::kNeighbourName,
                TextAnchor::start,
                true,
                0,
                style::kInk,
                0}},
          {caution}};
}

std::string description(const plan::Plan& plan) {
  std::string text = fmt::format("The search area of {} in {} sectors:", plan.mission.incident.name,
                                 plan.assignments.size());
  for (const plan::Assignment& assignment : plan.assignments) {
    text += fmt::format(" {} {}{}", assignment.sector_name, assignment.unit.callsign,
                        &assignment == &plan.assignments.back() ? "." : ",");
  }
  return text;
}

}  // namespace

Drawing draw_overview_map(const plan::Plan& plan, PaperSize size) {
  const auto& datum = plan.mission.datum;
  const MapPaper paper = map_paper(size, all_legends(plan), kHead);
  const MapView view = view_of(plan, paper.frame);
  Graticule grid_lines = graticule(view);

  Elements under;
  if (plan.mission.elevation) under = terrain_shading(view, plan.mission.elevation->model);
  Shown shown;
  shown.terrain = !under.empty();
  append(under, std::move(grid_lines.lines));
  append(under, cell_lines(view, plan.cells));
  Elements crews;
  LabelPlacer placer(grown(paper.frame, -0.6));
  for (std::size_t i = 0; i < plan.assignments.size(); ++i) {
    const plan::Assignment& assignment = plan.assignments[i];
    const CrewStyle crew = crew_style(i);
    crews.push_back({Shape{view.to_paper(assignment.sector),
                           Stroke{style::kInk, style::kNeighbourOutline, {}},
                           {},
                           sector_hatch(crew)}});
    append(crews,
           flown_legs(view, assignment, {crew.colour, style::kCrossLeg, crew.dash_mm, false}));
  }
  crews.push_back(
      {Shape{view.to_paper(plan.area), Stroke{style::kInk, style::kAreaOutline, {}}, {}, {}}});

  Elements over;
  const PaperBox& frame = paper.frame;
  NorthArrows norths(
      magnetic::variation(middle(plan.area), plan.mission.incident.operational_period.from));
  norths.place(frame, placer);
  for (const plan::Assignment& assignment : plan.assignments) {
    const PaperPoint at = view.to_paper(commence_search_point(assignment.pattern));
    placer.keep_clear(box_round(at, {2 * kStartRadius, 2 * kStartRadius}));
    append(over, start_symbol(at, first_track_on_paper_deg(view, assignment.pattern)));
  }
  shown.datum = datum && contains(grown(frame, -kDatumRadius), view.to_paper(datum->position));
  if (shown.datum) {
    const PaperPoint at = view.to_paper(datum->position);
    placer.keep_clear(box_round(at, {2 * kDatumRadius, 2 * kDatumRadius}));
    append(over, datum_symbol(at));
  }
  for (const plan::Assignment& assignment : plan.assignments) {
    append(over, sector_label(view, assignment.sector, assignment.sector_name,
                              assignment.unit.callsign, placer));
  }
  for (const plan::NamedPlace& place : bases(plan)) {
    const bool near = contains(grown(frame, -kBaseRadius), view.to_paper(place.position));
    (near ? shown.base : shown.far_base) = true;
    append(over, base(view, place, view.to_position(middle(frame)), placer));
  }
  if (shown.datum) {
    append(over,
           named_beside(view.to_paper(datum->position), kDatumRadius, "datum", false, placer));
  }
  append(under, cell_names(view, plan.cells, view.to_paper(plan.area), placer));
  append(under, std::move(crews));

  Drawing drawing;
  drawing.size = size;
  drawing.title = fmt::format("Overview of {}", plan.mission.incident.name);
  drawing.description = description(plan);
  drawing.elements.push_back({Group{std::move(under), frame}});
  drawing.elements.push_back({Group{std::move(over), frame}});
  append(drawing.elements, head(plan, paper));
  append(drawing.elements,
         furniture(view, paper, norths, std::move(grid_lines.labels), legend_items(plan, shown)));
  return drawing;
}

}  // namespace sweepwright::formats
