#include "formats/map_layers.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "formats/map_graticule.hpp"
#include "formats/map_style.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/flight/flown_path.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kLeastCell = 2;        // mm: smaller cells are a grey mesh that tells nothing
constexpr double kLeastCellName = 2.1;  // mm
constexpr double kLargestCellName = 4;  // mm
constexpr double kLeastArrowLeg = 5;    // mm

PaperPoint along(PaperPoint from, PaperPoint to, double share) {
  return from + share * (to - from);
}

/// The part of the frame that a cell takes up; none for one that is too small to see.
std::optional<PaperBox> seen_part(const MapView& view, const PaperArea& cell) {
  const auto box = bounds(cell);
  if (!box) return std::nullopt;
  const double longest = std::max(box->width_mm(), box->height_mm());
  if (area_mm2(cell) < kLeastCell * longest) return std::nullopt;  // narrower than kLeastCell
  const PaperBox seen = intersection(*box, view.frame());
  if (seen.width_mm() <= 0 || seen.height_mm() <= 0) return std::nullopt;
  return seen;
}

/// The size of a text of that width in ems that fits into a box, at most kLargestCellName.
double largest_text(double along_mm, double across_mm, double ems) {
  return std::min({kLargestCellName, 0.45 * across_mm, 0.8 * along_mm / ems});
}

/// Small enough for the gaps between neighbouring search legs.
double arrow_size_mm(const MapView& view, const pattern::Pattern& pattern) {
  constexpr double kLargest = 2.6;
  if (pattern.spacing == Length()) return kLargest;  // waypoints without a spacing
  return std::clamp(view.on_paper_mm(pattern.spacing) * 0.9, 1.2, kLargest);
}

/// Of lines that a pattern goes by.
const Stroke kGuide{style::kQuiet, 0.5, {2.6, 1.2}};

}  // namespace

Elements cell_lines(const MapView& view, const std::vector<grid::Cell>& cells) {
  Elements lines;
  for (const grid::Cell& cell : cells) {
    const PaperArea area = view.to_paper(outline(cell));
    if (!seen_part(view, area)) continue;
    lines.push_back({Shape{area, Stroke{style::kFaint, style::kCellLine, {}}, {}, {}}});
  }
  return lines;
}

Elements cell_names(const MapView& view, const std::vector<grid::Cell>& cells,
                    const PaperArea& ground, LabelPlacer& placer) {
  Elements names;
  for (const grid::Cell& cell : cells) {
    const PaperArea area = view.to_paper(outline(cell));
    const auto seen = seen_part(view, area);
    if (!seen) continue;
    const double ems = text_width_mm(cell.name, 1, true);
    const double level = largest_text(seen->width_mm(), seen->height_mm(), ems);
    const double upright = largest_text(seen->height_mm(), seen->width_mm(), ems);
    // Far north and south the cells are narrow: there names stand on end.
    const bool on_end = level < kLeastCellName;
    const double size = on_end ? upright : level;
    if (size < kLeastCellName) continue;
    Text text{{}, cell.name, size, TextAnchor::middle, true, on_end ? -90.0 : 0.0, style::kCellName,
              0};
    const PaperSize needed = label_size(text);
    std::vector<PaperPoint> places =
        places_inside(area, grown(view.frame(), -0.5), needed, view.to_paper(label_point(cell)));
    std::stable_partition(places.begin(), places.end(),
                          [&](PaperPoint at) { return contains(ground, box_round(at, needed)); });
    const auto at = placer.place_over_lines(needed, places);
    if (!at) continue;
    text.at = *at;
    names.push_back({text});
  }
  return names;
}

Elements legs(const MapView& view, const pattern::Pattern& pattern, const LegPen& pen) {
  const double arrow_size = arrow_size_mm(view, pattern);
  Elements lines;
  Elements arrows;
  for (const pattern::Leg& leg : pattern.legs) {
    const PaperPoint from = view.to_paper(leg.from);
    const PaperPoint to = view.to_paper(leg.to);
    Stroke stroke{pen.colour, pen.width_mm, pen.dash_mm};
    if (leg.kind == pattern::LegKind::cross) {
      stroke.width_mm *= 0.8;
      if (pen.arrows) stroke.dash_mm = {1.4, 0.8};
    }
    if (leg.kind == pattern::LegKind::transit) stroke.dash_mm = {0.4, 0.9};
    lines.push_back({Line{{from, to}, stroke}});
    if (pen.arrows && leg.kind == pattern::LegKind::search &&
        length_mm(to - from) >= kLeastArrowLeg) {
      arrows.push_back(
          arrowhead(along(from, to, 0.6), direction_deg(from, to), arrow_size, pen.colour));
    }
  }
  append(lines, std::move(arrows));
  return lines;
}

Elements guide_lines(const MapView& view, const pattern::Pattern& pattern) {
  Elements out;
  for (const pattern::GuideLine& guide : pattern.guides) {
    PaperLine line;
    for (const Position& place : guide.path) line.push_back(view.to_paper(place));
    out.push_back({Line{line, kGuide}});
    const PaperPoint before = line[line.size() - 2];
    out.push_back(arrowhead(line.back(), direction_deg(before, line.back()), 2.2, kGuide.colour));
  }
  return out;
}

std::vector<LegendItem> guide_legend(const pattern::Pattern& pattern) {
  std::vector<LegendItem> items;
  for (const pattern::GuideLine& guide : pattern.guides) {
    items.push_back(legend_line(guide.name, kGuide));
  }
  return items;
}

Elements flown_legs(const MapView& view, const plan::Assignment& assignment, const LegPen& pen) {
  const flight::FlownPattern& flown = assignment.flown;
  const std::vector<flight::FlownLegPath> paths = flight::flown_paths(flown);
  const auto on_paper = [&](const std::vector<flight::PathPoint>& points) {
    PaperLine line;
    for (const flight::PathPoint& point : points) line.push_back(view.to_paper(point.position));
    return line;
  };
  const Stroke thin{pen.colour, 0.6 * pen.width_mm, {}};
  Elements joins;
  pattern::Pattern searched = assignment.pattern;
  searched.legs.clear();
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const flight::FlownLeg& leg = flown.legs[i];
    if (!leg.searching) continue;
    if (leg.leg.kind == pattern::LegKind::search) {
      searched.legs.push_back(leg.leg);
    } else {
      joins.push_back({Line{on_paper(paths[i].straight), thin}});
    }
    // The turn for home is no part of the search.
    const bool last = i + 1 == paths.size() || !flown.legs[i + 1].searching;
    if (leg.turn && !last) joins.push_back({Line{on_paper(paths[i].turn), thin}});
  }
  append(joins, legs(view, searched, pen));
  return joins;
}

Elements leg_numbers(const MapView& view, const pattern::Pattern& pattern, LabelPlacer& placer) {
  Elements out;
  const std::size_t count = pattern.legs.size();
  const auto add = [&](std::size_t i, bool must) {
    const PaperPoint from = view.to_paper(pattern.legs[i].from);
    const PaperPoint to = view.to_paper(pattern.legs[i].to);
    const double length = length_mm(to - from);
    Text text{{}, std::to_string(i + 1), style::kLegNumber, TextAnchor::middle, true,
              0,  style::kInk,           style::kHalo};
    std::vector<PaperPoint> places;
    for (const double mm : {5.0, 8.0, 11.0, 14.0}) {
      if (mm < 0.5 * length) places.push_back(along(from, to, mm / length));
    }
    for (const double share : {0.5, 0.3, 0.4, 0.75}) places.push_back(along(from, to, share));
    append(out, must ? placed_anyway(text, places, placer) : placed(text, places, placer));
  };
  // The first and the last leg matter most; then search legs; the others where room is left.
  add(0, true);
  if (count > 1) add(count - 1, true);
  for (const bool search : {true, false}) {
    for (std::size_t i = 1; i + 1 < count; ++i) {
      const pattern::Leg& leg = pattern.legs[i];
      if ((leg.kind == pattern::LegKind::search) != search) continue;
      const double length = length_mm(view.to_paper(leg.to) - view.to_paper(leg.from));
      if (length > (search ? 3 : 5)) add(i, false);
    }
  }
  return out;
}

double first_track_on_paper_deg(const MapView& view, const pattern::Pattern& pattern) {
  const pattern::Leg& first = pattern.legs.front();
  return direction_deg(view.to_paper(first.from), view.to_paper(first.to));
}

Elements placed(Text text, const std::vector<PaperPoint>& places, LabelPlacer& placer) {
  const auto at = placer.place(label_size(text), places);
  if (!at) return {};
  text.at = *at;
  text.anchor = TextAnchor::middle;
  return {{std::move(text)}};
}

Elements placed_anyway(Text text, const std::vector<PaperPoint>& places, LabelPlacer& placer) {
  text.at = placer.place_anyway(label_size(text), places);
  text.anchor = TextAnchor::middle;
  return {{std::move(text)}};
}

Elements named_beside(PaperPoint symbol, double radius_mm, const std::string& name, bool bold,
                      LabelPlacer& placer) {
  Text text{symbol, name, style::kSymbolName, TextAnchor::middle,
            bold,   0,    style::kInk,        style::kHalo};
  return placed_anyway(text, places_round(symbol, radius_mm, label_size(text)), placer);
}

Hatch sector_hatch(const CrewStyle& crew) {
  Colour colour = crew.colour;
  colour.opacity = 110;
  return {colour, 0.1, 1.6, crew.hatch_direction_deg};
}

Elements sector_label(const MapView& view, const Region& sector, const std::string& name,
                      const std::string& crew, LabelPlacer& placer) {
  const PaperArea area = view.to_paper(sector);
  const auto at = visible_middle(area, view.frame());
  if (!at) return {};
  const auto label = [&](std::string text, double size, bool bold) {
    return Text{*at, std::move(text), size, TextAnchor::middle, bold, 0, style::kInk, style::kHalo};
  };
  const double room = std::min(45.0, 0.9 * bounds(area)->width_mm());
  const Text first = label(name, style::kSectorName, true);
  const std::vector<Text> both{
      first, label(fitted(crew, style::kNeighbourName, false, room), style::kNeighbourName, false)};
  if (const auto place = placer.place(stack_size(both),
                                      places_inside(area, view.frame(), stack_size(both), *at))) {
    return stacked_at(both, *place);
  }
  const Text small = label(name, style::kSmallText, true);
  for (const Text& alone : {first, label(name, style::kNeighbourName, true), small}) {
    const auto inside = places_inside(area, view.frame(), label_size(alone), *at);
    if (Elements found = placed(alone, inside, placer); !found.empty()) return found;
  }
  return placed_anyway(small, {*at}, placer);
}

Elements base(const MapView& view, const plan::NamedPlace& base, Position seen_from,
              LabelPlacer& placer) {
  const PaperBox inside = grown(view.frame(), -kBaseRadius);
  const PaperPoint at = view.to_paper(base.position);
  const double most = view.frame().width_mm() * 0.6;
  Elements out;
  if (contains(inside, at)) {
    placer.keep_clear(box_round(at, {2 * kBaseRadius, 2 * kBaseRadius}));
    out = base_symbol(at);
    append(out, named_beside(at, kBaseRadius, fitted(base.name, style::kSymbolName, false, most),
                             false, placer));
    return out;
  }
  const auto way = clipped(PaperSegment{view.to_paper(seen_from), at}, grown(view.frame(), -1));
  if (!way) return out;
  const GeodesicLine home = geodesic(seen_from, base.position);
  const double length = std::min(9.0, length_mm(way->to - way->from));
  const PaperPoint tip = way->to;
  const PaperPoint tail = tip - length * unit_vector(direction_deg(view.to_paper(seen_from), at));
  placer.keep_clear({std::min(tip.x_mm, tail.x_mm) - 0.8, std::min(tip.y_mm, tail.y_mm) - 0.8,
                     std::max(tip.x_mm, tail.x_mm) + 0.8, std::max(tip.y_mm, tail.y_mm) + 0.8});
  out = arrow(tail, tip, style::kInk);
  const PaperPoint beside = along(tail, tip, 0.5);
  const Text name{beside,
                  fitted(base.name, style::kSymbolName, false, most),
                  style::kSymbolName,
                  TextAnchor::middle,
                  false,
                  0,
                  style::kInk,
                  style::kHalo};
  Text way_home = name;
  way_home.text = fmt::format("{}, {}", format_length(home.length, LengthUnit::nautical_mile, 1),
                              format_direction(home.start_track));
  const std::vector<Text> lines{name, way_home};
  append(out, stacked_at(lines,
                         placer.place_anyway(stack_size(lines),
                                             places_round(beside, length / 2, stack_size(lines)))));
  return out;
}

PaperSize stack_size(const std::vector<Text>& lines) {
  PaperSize size;
  for (const Text& line : lines) {
    const PaperSize one = label_size(line);
    size = {std::max(size.width_mm, one.width_mm), size.height_mm + one.height_mm};
  }
  return size;
}

Elements stacked_at(const std::vector<Text>& lines, PaperPoint centre) {
  Elements out;
  double top = centre.y_mm - stack_size(lines).height_mm / 2;
  for (Text line : lines) {
    const double height = label_size(line).height_mm;
    line.at = {centre.x_mm, top + height / 2};
    line.anchor = TextAnchor::middle;
    top += height;
    out.push_back({std::move(line)});
  }
  return out;
}

MapPaper map_paper(PaperSize size, const std::vector<std::vector<LegendItem>>& legends,
                   double head_mm) {
  if (!(size.width_mm >= kLeastMapSize.width_mm) || !(size.height_mm >= kLeastMapSize.height_mm)) {
    throw Error(ErrorCode::value,
                fmt::format("a map of {:.0f} mm by {:.0f} mm is too small to read", size.width_mm,
                            size.height_mm),
                fmt::format("make it at least {:.0f} mm wide and {:.0f} mm high",
                            kLeastMapSize.width_mm, kLeastMapSize.height_mm));
  }
  constexpr double kGap = 1.5;
  MapPaper paper;
  const double legend_left = kScaleBarsSize.width_mm + 2;
  const double legend_width = size.width_mm - legend_left;
  double strip = kScaleBarsSize.height_mm;
  for (const std::vector<LegendItem>& items : legends) {
    strip = std::max(strip, legend_height_mm(items, legend_width));
  }
  const double strip_top = size.height_mm - strip - 0.3;
  paper.frame = {kGraticuleMargin + 0.2, head_mm + kGraticuleMargin + 0.2,
                 size.width_mm - kGraticuleMargin - 0.2, strip_top - kGap - kGraticuleMargin};
  paper.scales = {kGraticuleMargin, strip_top, legend_left, size.height_mm};
  paper.legend = {legend_left, strip_top, size.width_mm, size.height_mm};
  return paper;
}

Elements furniture(const MapView& view, const MapPaper& paper, const NorthArrows& norths,
                   Elements graticule_labels, const std::vector<LegendItem>& items) {
  const PaperBox& frame = paper.frame;
  Elements out = std::move(graticule_labels);
  out.push_back({Shape{{{{frame.left_mm, frame.top_mm},
                         {frame.right_mm, frame.top_mm},
                         {frame.right_mm, frame.bottom_mm},
                         {frame.left_mm, frame.bottom_mm}}},
                       Stroke{style::kInk, style::kFrameLine, {}},
                       {},
                       {}}});
  append(out, norths.elements());
  append(out, scale_bars({paper.scales.left_mm, paper.scales.top_mm}, view.mm_per_metre()));
  append(out, legend(items, paper.legend));
  return out;
}

LegendItem legend_line(std::string text, Stroke stroke) {
  return {std::move(text), [stroke = std::move(stroke)](PaperBox box) -> Elements {
            const double y = middle(box).y_mm;
            return {{Line{{{box.left_mm, y}, {box.right_mm, y}}, stroke}}};
          }};
}

LegendItem legend_way_to_base(std::string text) {
  return {std::move(text), [](PaperBox box) {
            const double y = middle(box).y_mm;
            return arrow({box.left_mm, y}, {box.right_mm, y}, style::kInk);
          }};
}

LegendItem legend_symbol(std::string text, std::function<Elements(PaperPoint)> symbol) {
  return {std::move(text), [symbol = std::move(symbol)](PaperBox box) {
            constexpr double kSmaller = 0.7;
            return scaled(symbol(middle(box)), middle(box), kSmaller);
          }};
}

}  // namespace sweepwright::formats
