// The map of a pattern as flown: the path over the ground on top of the legs as drawn.
#include <fmt/format.h>

#include "formats/map_ground.hpp"
#include "formats/map_style.hpp"
#include "sweepwright/formats/map.hpp"

namespace sweepwright::formats {
namespace {

PaperLine on_paper(const MapView& view, const std::vector<flight::PathPoint>& points) {
  PaperLine line;
  for (const flight::PathPoint& point : points) line.push_back(view.to_paper(point.position));
  return line;
}

Stroke pen(const flight::FlownLeg& leg, Colour colour) {
  if (!leg.searching) return {colour, style::kCrossLeg, {0.4, 0.9}};
  if (leg.leg.kind == pattern::LegKind::search) return {colour, style::kSearchLeg, {}};
  return {colour, style::kCrossLeg, {}};
}

/// An arrowhead on the straight part of a search leg, where there is room for it.
Elements leg_arrow(const PaperLine& line, Colour colour) {
  constexpr double kLeastLeg = 9;  // mm
  const PaperPoint from = line.front();
  const PaperPoint to = line.back();
  if (length_mm(to - from) < kLeastLeg) return {};
  return {arrowhead(from + 0.6 * (to - from), direction_deg(from, to), 2.2, colour)};
}

}  // namespace

Drawing draw_flown_map(const FlownReport& report, const std::optional<Region>& area,
                       PaperSize size) {
  const Colour colour = crew_style(0).colour;
  std::vector<LegendItem> legend{
      legend_symbol("commence search point", level_start_symbol),
      legend_symbol("end of search", end_symbol),
      legend_line("search leg as flown", Stroke{colour, style::kSearchLeg, {}}),
      legend_line("turns, cross and transit legs", Stroke{colour, style::kCrossLeg, {}}),
      legend_line("pattern as drawn", Stroke{style::kFaint, style::kCellLine, {}})};
  const bool transits = !report.flown.legs.front().searching;
  if (transits) {
    legend.push_back(
        legend_line("to and from the base", Stroke{colour, style::kCrossLeg, {0.4, 0.9}}));
  }
  if (area) legend.push_back(legend_line("area", Stroke{style::kInk, style::kAreaOutline, {}}));
  for (LegendItem& item : guide_legend(report.pattern)) legend.push_back(std::move(item));
  const std::vector<flight::FlownLegPath> paths = flown_paths(report.flown);
  std::vector<Position> shown = shown_places(report.pattern);
  for (std::size_t i = 0; i < paths.size(); ++i) {
    if (!report.flown.legs[i].searching) continue;
    const Path straight = places(paths[i].straight);
    const Path turn = places(paths[i].turn);
    shown.insert(shown.end(), straight.begin(), straight.end());
    shown.insert(shown.end(), turn.begin(), turn.end());
  }
  if (area) {
    const std::vector<Position> outer = corners(*area);
    shown.insert(shown.end(), outer.begin(), outer.end());
  }
  GroundMap map = ground_map(shown, size, legend);
  Elements under = map.graticule.lines;
  if (area) under.push_back(area_outline(map.view, *area));
  append(under, guide_lines(map.view, report.pattern));
  PaperLine drawn;
  for (const Position& position : path(report.pattern)) {
    drawn.push_back(map.view.to_paper(position));
  }
  under.push_back({Line{drawn, Stroke{style::kFaint, style::kCellLine, {}}}});
  Elements over;
  std::optional<PaperPoint> end;
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const flight::FlownLeg& leg = report.flown.legs[i];
    const PaperLine straight = on_paper(map.view, paths[i].straight);
    over.push_back({Line{straight, pen(leg, colour)}});
    if (leg.leg.kind == pattern::LegKind::search) append(over, leg_arrow(straight, colour));
    if (leg.searching) end = straight.back();
    if (leg.turn) {
      over.push_back({Line{on_paper(map.view, paths[i].turn), {colour, style::kCrossLeg, {}}}});
    }
  }
  const PaperPoint start = map.view.to_paper(commence_search_point(report.pattern));
  append(over, start_symbol(start, first_track_on_paper_deg(map.view, report.pattern)));
  if (end) append(over, end_symbol(*end));
  const std::string title = fmt::format("{} as flown", pattern::search_title(report.pattern.kind));
  return finished(std::move(map), size, title, std::move(under), std::move(over), legend);
}

}  // namespace sweepwright::formats
