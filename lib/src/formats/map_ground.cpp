// Maps of cells and of one pattern, without a plan round them.
#include "formats/map_ground.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "formats/map_style.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/map.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kRoomRoundGround = 5;  // mm
constexpr double kHead = 4;             // mm

}  // namespace

GroundMap ground_map(const std::vector<Position>& shown, PaperSize size,
                     const std::vector<LegendItem>& legend) {
  const MapPaper paper = map_paper(size, {legend}, kHead);
  const MapView view(LocalPlane(middle(Region{{Polygon{shown, {}}}})), shown, paper.frame,
                     grown(paper.frame, -kRoomRoundGround));
  GroundMap map{paper, view, graticule(view), LabelPlacer(grown(paper.frame, -0.6)),
                NorthArrows({})};
  map.norths.place(paper.frame, map.placer);
  return map;
}

Drawing finished(GroundMap map, PaperSize size, const std::string& title, Elements under,
                 Elements over, const std::vector<LegendItem>& legend) {
  const PaperBox& frame = map.paper.frame;
  Drawing drawing;
  drawing.size = size;
  drawing.title = title;
  drawing.description = title;
  drawing.elements.push_back({Group{std::move(under), frame}});
  drawing.elements.push_back({Group{std::move(over), frame}});
  drawing.elements.push_back({Text{{frame.left_mm, kHead / 2},
                                   title,
                                   style::kNeighbourName,
                                   TextAnchor::start,
                                   true,
                                   0,
                                   style::kInk,
                                   0}});
  drawing.elements.push_back({Text{{frame.right_mm, kHead / 2},
                                   std::string(kCautions.front()),
                                   style::kNeighbourName,
                                   TextAnchor::end,
                                   true,
                                   0,
                                   style::kInk,
                                   0}});
  append(drawing.elements,
         furniture(map.view, map.paper, map.norths, std::move(map.graticule.labels), legend));
  return drawing;
}

Element area_outline(const MapView& view, const Region& area) {
  return {Shape{view.to_paper(area), Stroke{style::kInk, style::kAreaOutline, {}}, {}, {}}};
}

namespace {

bool has_leg(const pattern::Pattern& pattern, pattern::LegKind kind) {
  return std::any_of(pattern.legs.begin(), pattern.legs.end(),
                     [&](const pattern::Leg& leg) { return leg.kind == kind; });
}

}  // namespace

Drawing draw_cells_map(const std::vector<grid::Cell>& cells, const std::optional<Region>& area,
                       PaperSize size) {
  if (cells.empty() || cells.size() > kMostCellsOnMap) {
    throw Error(
        ErrorCode::value, fmt::format("a picture of {} cells cannot be read", cells.size()),
        fmt::format("ask for 1 to {} cells: a coarser level or a smaller area", kMostCellsOnMap));
  }
  std::vector<LegendItem> legend{
      legend_line("grid cell", Stroke{style::kFaint, style::kCellLine, {}})};
  if (area) legend.push_back(legend_line("area", Stroke{style::kInk, style::kAreaOutline, {}}));
  std::vector<Position> shown;
  PaperArea ground;
  for (const grid::Cell& cell : cells) {
    const std::vector<Position> outer = corners(outline(cell));
    shown.insert(shown.end(), outer.begin(), outer.end());
  }
  GroundMap map = ground_map(shown, size, legend);
  for (const grid::Cell& cell : cells) {
    for (const PaperLine& ring : map.view.to_paper(outline(cell))) ground.push_back(ring);
  }
  Elements under = map.graticule.lines;
  append(under, cell_lines(map.view, cells));
  Elements over;
  if (area) over.push_back(area_outline(map.view, *area));
  append(over, cell_names(map.view, cells, ground, map.placer));
  const std::string title = fmt::format("{} {}", cells.front().system, cells.front().level.name);
  return finished(std::move(map), size, title, std::move(under), std::move(over), legend);
}

std::vector<Position> shown_places(const pattern::Pattern& pattern) {
  std::vector<Position> shown = path(pattern);
  for (const pattern::GuideLine& guide : pattern.guides) {
    shown.insert(shown.end(), guide.path.begin(), guide.path.end());
  }
  return shown;
}

Drawing draw_pattern_map(const pattern::Pattern& pattern, const std::optional<Region>& area,
                         PaperSize size) {
  const CrewStyle crew = crew_style(0);
  std::vector<LegendItem> legend{
      legend_symbol("commence search point", level_start_symbol),
      legend_symbol("end of pattern", end_symbol),
      legend_line("search leg", Stroke{crew.colour, style::kSearchLeg, {}})};
  if (has_leg(pattern, pattern::LegKind::cross)) {
    legend.push_back(legend_line("cross leg", Stroke{crew.colour, style::kCrossLeg, {1.2, 0.8}}));
  }
  if (has_leg(pattern, pattern::LegKind::transit)) {
    legend.push_back(
        legend_line("transit leg", Stroke{crew.colour, style::kSearchLeg, {0.4, 0.9}}));
  }
  if (area) legend.push_back(legend_line("area", Stroke{style::kInk, style::kAreaOutline, {}}));
  for (LegendItem& item : guide_legend(pattern)) legend.push_back(std::move(item));
  std::vector<Position> shown = shown_places(pattern);
  if (area) {
    const std::vector<Position> outer = corners(*area);
    shown.insert(shown.end(), outer.begin(), outer.end());
  }
  GroundMap map = ground_map(shown, size, legend);
  Elements under = map.graticule.lines;
  if (area) under.push_back(area_outline(map.view, *area));
  append(under, guide_lines(map.view, pattern));
  append(under, legs(map.view, pattern, {crew.colour, style::kSearchLeg, {}, true}));
  Elements over;
  const PaperPoint start = map.view.to_paper(commence_search_point(pattern));
  const PaperPoint end = map.view.to_paper(pattern.legs.back().to);
  map.placer.keep_clear(box_round(start, {2 * kStartRadius, 2 * kStartRadius}));
  map.placer.keep_clear(box_round(end, {2 * kEndRadius, 2 * kEndRadius}));
  append(over, start_symbol(start, first_track_on_paper_deg(map.view, pattern)));
  append(over, end_symbol(end));
  append(over, leg_numbers(map.view, pattern, map.placer));
  const std::string title = pattern::search_title(pattern.kind);
  return finished(std::move(map), size, title, std::move(under), std::move(over), legend);
}

}  // namespace sweepwright::formats
