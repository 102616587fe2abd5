#include <fmt/format.h>

#include <algorithm>

#include "formats/page_parts.hpp"
#include "formats/pages.hpp"
#include "sweepwright/formats/board.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/timeline.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kMargin = 8;      // mm
constexpr double kText = 2.8;      // mm
constexpr double kTitle = 6;       // mm
constexpr double kKeyName = 2.4;   // mm
constexpr double kKeyValue = 4.2;  // mm
constexpr double kNames = 27;      // mm: the names of fields
constexpr double kGap = kGapAfterTable;

/// The name of the incident, smaller where it is long, and the fields in two columns under it.
Strips first_head(const Board& board, double width_mm) {
  const double full = measured_width_mm(board.title, {kTitle, true, TextAnchor::start});
  const double size = std::clamp(kTitle * width_mm / std::max(full, 1.0), 2.5, kTitle);
  Strips strips = set_text(board.title, width_mm, {size, true, TextAnchor::start});
  strips.push_back(gap(0.8));
  const double half = (width_mm - kGap) / 2;
  const auto middle = board.heading.begin() + static_cast<std::ptrdiff_t>(board.heading.size() / 2);
  const TextLook look{kText, true, TextAnchor::start};
  Strip fields;
  append(fields, set_fields({board.heading.begin(), middle}, half, kNames, look), {0, 0});
  append(fields, set_fields({middle, board.heading.end()}, half, kNames, look), {half + kGap, 0});
  strips.push_back(std::move(fields));
  strips.push_back(gap(1.5));
  return strips;
}

}  // namespace

std::vector<Drawing> set_board(const plan::Plan& plan, const Provenance& provenance,
                               const Paper& paper) {
  const Board board = make_board(plan, provenance);
  const PaperSize size{paper.size.height_mm, paper.size.width_mm};
  const double width = size.width_mm - 2 * kMargin;
  Pages pages({size, kMargin,
               [&](std::size_t page, double width_mm) {
                 return page == 1 ? first_head(board, width_mm)
                                  : later_head(board.title, page, width_mm, kText);
               },
               set_foot(board.cautions, board.origin, width, kText), board.title,
               "The planner's board"});
  pages.put(
      set_key_figures(board.key_figures, board.key_figures.size(), width, kKeyName, kKeyValue));
  pages.space(kGap);
  Strips crews = set_table(board.crews, width, kText);
  pages.put(crews, {crews[0], crews[1]});
  const Drawing timeline = draw_timeline(plan, width);
  if (timeline.size.height_mm > pages.left_mm()) pages.begin_page();
  pages.put_drawing(timeline, {kMargin, pages.cursor_mm()});
  pages.space(timeline.size.height_mm + kGap);
  Strips times = set_table(board.times, width, kText);
  pages.put(times, {times[0], times[1]});
  const double third = (width - kGap) / 3;
  Strips lists = set_list("Hazards", board.hazards, width - third - kGap, kText);
  append(lists, set_list("To know", board.remarks, width - third - kGap, kText));
  pages.put_columns({{0, set_table(board.frequencies, third, kText)}, {third + kGap, lists}});
  if (!board.findings.rows.empty()) {
    Strips findings = set_table(board.findings, width, kText);
    pages.put(findings, {findings[0], findings[1]});
  }
  Strips footer;
  for (const std::string& line : board.footer) {
    append(footer, set_text(line, width, {1.9, false, TextAnchor::start}));
  }
  // The map takes what is free, a page of its own where that is little.
  constexpr double kLeastMap = 100;  // mm
  if (pages.left_mm() - height_mm(footer) < kLeastMap) pages.begin_page();
  const PaperSize map{width, pages.left_mm() - height_mm(footer) - kGap};
  pages.put_drawing(draw_overview_map(plan, map), {kMargin, pages.cursor_mm()});
  pages.space(map.height_mm + 1);
  pages.put(footer);
  return pages.take();
}

}  // namespace sweepwright::formats
