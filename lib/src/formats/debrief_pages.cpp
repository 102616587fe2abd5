#include <fmt/format.h>

#include "formats/page_parts.hpp"
#include "formats/pages.hpp"
#include "sweepwright/formats/debrief_map.hpp"
#include "sweepwright/formats/debrief_report.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kMargin = 8;      // mm
constexpr double kText = 2.6;      // mm
constexpr double kTitle = 5.4;     // mm
constexpr double kKeyName = 2.4;   // mm
constexpr double kKeyValue = 4.2;  // mm
constexpr double kNames = 30;      // mm: the names of fields
constexpr double kGap = kGapAfterTable;
constexpr double kSmall = 1.9;     // mm
constexpr double kLeastMap = 110;  // mm

Strips first_head(const DebriefReport& report, double width_mm) {
  Strips strips = set_text("Debrief: " + report.title, width_mm, {kTitle, true, TextAnchor::start});
  strips.push_back(gap(0.8));
  append(strips, set_fields(report.heading, width_mm, kNames, {kText, true, TextAnchor::start}));
  strips.push_back(gap(1.5));
  return strips;
}

void put_table(Pages& pages, const ReportTable& table) {
  const Strips strips = set_table(table, pages.width_mm(), kText);
  if (table.rows.empty()) {
    pages.put(strips);
  } else {
    // A title and heads stand over a row at least.
    if (height_mm({strips[0], strips[1], strips[2]}) > pages.left_mm()) pages.begin_page();
    pages.put(strips, {strips[0], strips[1]});  // title and heads
  }
}

void put_drawing(Pages& pages, const Drawing& drawing) {
  if (drawing.size.height_mm > pages.left_mm()) pages.begin_page();
  pages.put_drawing(drawing, {pages.margin_mm(), pages.cursor_mm()});
  pages.space(drawing.size.height_mm + kGap);
}

}  // namespace

std::vector<Drawing> set_debrief(const DebriefReport& report, const DebriefOutcome& outcome,
                                 const Paper& paper) {
  const double width = paper.size.width_mm - 2 * kMargin;
  Pages pages({paper.size, kMargin,
               [&](std::size_t page, double width_mm) {
                 return page == 1 ? first_head(report, width_mm)
                                  : later_head("Debrief: " + report.title, page, width_mm, kText);
               },
               set_foot(report.cautions, report.origin, width, kText), "Debrief: " + report.title,
               "Debrief report"});
  pages.put(
      set_key_figures(report.key_figures, report.key_figures.size(), width, kKeyName, kKeyValue));
  pages.space(kGap);
  put_table(pages, report.sectors);
  // The map takes what is free, a page of its own where that is little.
  if (pages.left_mm() < kLeastMap) pages.begin_page();
  put_drawing(pages, draw_debrief_map(outcome, {width, pages.left_mm() - 1}));
  for (const ReportTable* table : {&report.flying, &report.holes, &report.sightings, &report.belief,
                                   &report.proposal, &report.uses}) {
    put_table(pages, *table);
  }
  put_drawing(pages, draw_debrief_chart(outcome, width));
  pages.put(set_list("To know", report.remarks, width, kText));
  pages.put(set_list("Read from the logs and reports, and left out", report.dropped, width, kText));
  Strips footer;
  for (const std::string& line : report.footer) {
    append(footer, set_text(line, width, {kSmall, false, TextAnchor::start}));
  }
  pages.put(footer);
  return pages.take();
}

}  // namespace sweepwright::formats
