#include "sweepwright/formats/coverage_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "formats/coverage_cells.hpp"
#include "formats/map_ground.hpp"
#include "formats/map_style.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/ramp.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::size_t kMostBlocks = 220;  // along a side of the raster
constexpr double kSeam = 0.08;            // mm: closes hairlines between runs
constexpr double kTrackLine = 0.16;
constexpr double kBesideHole = 3;  // mm
constexpr Colour kTrack{26, 26, 26, 150};

Colour class_colour(std::size_t at) {
  // The darkest fifth is left out, so that tracks and numbers can be read on it.
  const auto last = static_cast<double>(pod_classes().size() - 1);
  return ramp_colour(0.8 * (1 - static_cast<double>(at) / last));
}

Stroke hole_stroke() {
  return {style::kInk, style::kSearchLeg, {1.4, 0.8}};
}

std::vector<LegendItem> legend_items(const CoverageReport& report) {
  std::vector<LegendItem> items;
  for (std::size_t at = 0; at < pod_classes().size(); ++at) {
    items.push_back({pod_classes()[at].label, [at](PaperBox box) {
                       const PaperBox in = grown(box, -0.3);
                       return Elements{{Shape{{{{in.left_mm, in.top_mm},
                                                {in.right_mm, in.top_mm},
                                                {in.right_mm, in.bottom_mm},
                                                {in.left_mm, in.bottom_mm}}},
                                              Stroke{style::kFaint, style::kCellLine, {}},
                                              class_colour(at),
                                              {}}}};
                     }});
  }
  items.push_back(legend_line("track as flown", Stroke{style::kInk, kTrackLine, {}}));
  items.push_back(legend_line("area", Stroke{style::kInk, style::kAreaOutline, {}}));
  if (report.wanted) {
    items.push_back(legend_line(fmt::format("hole: POD under {:g} %", 100 * report.wanted->value()),
                                hole_stroke()));
  }
  if (!report.named.empty()) {
    items.push_back(legend_line("grid cell", Stroke{style::kFaint, style::kCellLine, {}}));
  }
  return items;
}

/// Squares of cells, each with the class of its mean POD.
struct Blocks {
  std::size_t side = 1;  ///< in cells
  std::size_t columns = 0;
  std::size_t rows = 0;
  std::vector<std::size_t> classes;  ///< kNone outside the area
  static constexpr std::size_t kNone = static_cast<std::size_t>(-1);
};

Blocks make_blocks(const CoverageReport& report) {
  const debrief::CoverageFrame& frame = report.map.frame;
  Blocks blocks;
  blocks.side = (std::max(frame.columns, frame.rows) + kMostBlocks - 1) / kMostBlocks;
  blocks.columns = (frame.columns + blocks.side - 1) / blocks.side;
  blocks.rows = (frame.rows + blocks.side - 1) / blocks.side;
  std::vector<double> sum(blocks.columns * blocks.rows);
  std::vector<double> count(sum.size());
  for (const std::size_t cell : report.inside) {
    const std::size_t block =
        cell / frame.columns / blocks.side * blocks.columns + cell % frame.columns / blocks.side;
    sum[block] += debrief::pod(report.map, cell, report.law);
    ++count[block];
  }
  for (std::size_t i = 0; i < sum.size(); ++i) {
    blocks.classes.push_back(count[i] > 0 ? pod_class_of(sum[i] / count[i]) : Blocks::kNone);
  }
  return blocks;
}

/// The blocks from `first` to `end` of a row, as one shape.
Element run(const CoverageReport& report, const MapView& view, const Blocks& blocks,
            std::size_t row, std::size_t first, std::size_t end) {
  const debrief::CoverageFrame& frame = report.map.frame;
  const auto corner = [&](std::size_t column, std::size_t up) {
    const auto right = static_cast<double>(std::min(column * blocks.side, frame.columns));
    const auto above = static_cast<double>(std::min(up * blocks.side, frame.rows));
    return view.to_paper(frame.plane.to_position(
        {frame.corner.right + frame.cell * right, frame.corner.up + frame.cell * above}));
  };
  const Colour colour = class_colour(blocks.classes[row * blocks.columns + first]);
  return {
      Shape{{{corner(first, row), corner(end, row), corner(end, row + 1), corner(first, row + 1)}},
            Stroke{colour, kSeam, {}},
            colour,
            {}}};
}

Elements shading(const CoverageReport& report, const MapView& view) {
  const Blocks blocks = make_blocks(report);
  Elements elements;
  for (std::size_t row = 0; row < blocks.rows; ++row) {
    const auto* classes = blocks.classes.data() + row * blocks.columns;
    for (std::size_t first = 0; first < blocks.columns;) {
      std::size_t end = first + 1;
      while (end < blocks.columns && classes[end] == classes[first]) ++end;
      if (classes[first] != Blocks::kNone) {
        elements.push_back(run(report, view, blocks, row, first, end));
      }
      first = end;
    }
  }
  return elements;
}

Elements track_lines(const CoverageReport& report, const MapView& view) {
  Elements elements;
  for (const Path& path : report.tracks) {
    PaperLine line;
    for (const Position& place : path) line.push_back(view.to_paper(place));
    if (line.size() > 1) elements.push_back({Line{line, Stroke{kTrack, kTrackLine, {}}}});
  }
  return elements;
}

Elements hole_edges(const CoverageReport& report, const MapView& view) {
  Elements elements;
  for (const debrief::Hole& hole : report.holes) {
    const PaperArea edge = view.to_paper(hole.region);
    elements.push_back({Shape{edge, Stroke{kWhite, 2 * style::kSearchLeg, {}}, {}, {}}});
    elements.push_back({Shape{edge, hole_stroke(), {}, {}}});
  }
  return elements;
}

Elements hole_numbers(const CoverageReport& report, GroundMap& map) {
  Elements elements;
  for (std::size_t i = 0; i < report.holes.size(); ++i) {
    const PaperArea ground = map.view.to_paper(report.holes[i].region);
    const auto box = bounds(ground);
    if (!box || !contains(map.view.frame(), middle(*box))) continue;
    // A hole too thin for a label within has its number beside it.
    const PaperPoint at = visible_middle(ground, map.view.frame()).value_or(middle(*box));
    const Text number{at, std::to_string(i + 1), style::kSymbolName, TextAnchor::middle, true,
                      0,  style::kInk,           style::kHalo};
    const PaperSize needed = label_size(number);
    auto place = map.placer.place(needed, places_inside(ground, map.view.frame(), needed, at));
    if (!place) place = map.placer.place(needed, places_round(at, kBesideHole, needed));
    if (place) append(elements, stacked_at({number}, *place));
  }
  return elements;
}

/// Name and POD in the cell, where they have room; else the POD alone.
Elements cell_texts(const CoverageReport& report, GroundMap& map) {
  Elements elements;
  for (const debrief::GridCellCoverage& one : report.named) {
    const PaperArea ground = map.view.to_paper(grid::outline(one.cell));
    const auto box = bounds(ground);
    if (!box) continue;
    const auto line = [&](const std::string& words, bool bold) {
      return Text{middle(*box), words, style::kSmallText, TextAnchor::middle,
                  bold,         0,     style::kInk,       style::kHalo};
    };
    const Text pod = line(fmt::format("{:.0f} %", 100 * one.figures.pod), false);
    for (const auto& lines : {std::vector{line(one.cell.name, true), pod}, std::vector{pod}}) {
      const PaperSize needed = stack_size(lines);
      if (!contains(ground, box_round(middle(*box), needed))) continue;
      const auto place = map.placer.place_over_lines(needed, {middle(*box)});
      if (place) append(elements, stacked_at(lines, *place));
      break;
    }
  }
  return elements;
}

}  // namespace

Drawing draw_coverage_map(const CoverageReport& report, PaperSize size) {
  const std::vector<LegendItem> legend = legend_items(report);
  GroundMap map = ground_map(corners(report.area), size, legend);
  Elements under = shading(report, map.view);
  append(under, std::move(map.graticule.lines));
  std::vector<grid::Cell> cells;
  for (const debrief::GridCellCoverage& one : report.named) cells.push_back(one.cell);
  append(under, cell_lines(map.view, cells));
  append(under, track_lines(report, map.view));
  under.push_back(area_outline(map.view, report.area));
  append(under, hole_edges(report, map.view));
  Elements over = hole_numbers(report, map);
  append(over, cell_texts(report, map));
  std::string title = fmt::format("Coverage as flown: mean POD {:.0f} %", 100 * report.figures.pod);
  if (report.wanted) {
    title += fmt::format(", {} {} under {:g} %", report.holes.size(),
                         report.holes.size() == 1 ? "hole" : "holes", 100 * report.wanted->value());
  }
  return finished(std::move(map), size, title, std::move(under), std::move(over), legend);
}

}  // namespace sweepwright::formats
