#include <fmt/format.h>

#include <algorithm>

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
constexpr double kGap = 2;         // mm
constexpr double kSmall = 1.9;     // mm
constexpr double kLeastMap = 110;  // mm

Strip gap(double height_mm) {
  return {height_mm, {}, false};
}

void append(Strips& strips, Strips more) {
  for (Strip& strip : more) strips.push_back(std::move(strip));
}

/// Puts strips under each other onto one, from a place of it.
void append(Strip& strip, Strips more, PaperPoint at) {
  for (Strip& line : more) {
    for (Element& element : line.elements) {
      shift(element, at);
      strip.elements.push_back(std::move(element));
    }
    at.y_mm += line.height_mm;
  }
  strip.height_mm = std::max(strip.height_mm, at.y_mm);
}

Element frame_element(double width_mm, double height_mm) {
  return {Shape{{{{0, 0}, {width_mm, 0}, {width_mm, height_mm}, {0, height_mm}}},
                Stroke{kBlack, 0.4, {}},
                {},
                {}}};
}

Strips set_fields(const std::vector<SheetField>& fields, double width_mm) {
  Strips strips;
  for (const SheetField& field : fields) {
    append(strips,
           set_field(field.name, field.value, width_mm, kNames, {kText, true, TextAnchor::start}));
  }
  return strips;
}

/// What is needed at a glance, in one row.
Strip set_key_figures(const std::vector<SheetField>& figures, double width_mm) {
  Strip strip;
  const double each = width_mm / static_cast<double>(figures.size());
  for (std::size_t i = 0; i < figures.size(); ++i) {
    const PaperPoint at{each * static_cast<double>(i) + 1, 0.6};
    append(strip, set_text(figures[i].name, each, {kKeyName, false, TextAnchor::start}), at);
    append(strip, set_text(figures[i].value, each, {kKeyValue, true, TextAnchor::start}),
           {at.x_mm, at.y_mm + 1.4 * kKeyName});
  }
  strip.height_mm += 0.6;
  strip.elements.push_back(frame_element(width_mm, strip.height_mm));
  return strip;
}

/// Cautions in a frame, and by what the page was made.
Strips set_foot(const DebriefReport& report, double width_mm) {
  std::string cautions;
  for (const std::string& caution : report.cautions) {
    cautions += (cautions.empty() ? "" : " ") + caution;
  }
  Strip frame;
  append(frame, set_text(cautions, width_mm - 2, {kText, true, TextAnchor::start}), {1, 0.7});
  frame.height_mm += 0.7;
  frame.elements.push_back(frame_element(width_mm, frame.height_mm));
  Strips strips{gap(1), std::move(frame), gap(0.6)};
  append(strips, set_text(report.origin, width_mm, {kSmall, false, TextAnchor::start}));
  return strips;
}

Strips set_table(const ReportTable& table, double width_mm, double text_mm) {
  double shares = 0;
  for (const ReportColumn& column : table.columns) shares += column.share;
  std::vector<Column> columns;
  for (const ReportColumn& column : table.columns) {
    columns.push_back({column.head, width_mm * column.share / shares,
                       column.is_text ? TextAnchor::start : TextAnchor::end});
  }
  std::vector<Row> rows;
  for (const std::vector<std::string>& cells : table.rows) rows.push_back({cells, false});
  Strips strips{set_title(table.title, width_mm, text_mm)};
  if (!rows.empty()) {
    strips.push_back(set_heads(columns, 0.9 * text_mm));
    append(strips, set_rows(columns, rows, text_mm));
  }
  if (!table.note.empty()) {
    append(strips, set_text(table.note, width_mm, {0.9 * text_mm, false, TextAnchor::start}));
  }
  strips.push_back(gap(kGap));
  return strips;
}

Strips set_list(std::string_view title, const std::vector<std::string>& lines, double width_mm,
                double text_mm) {
  if (lines.empty()) return {};
  Strips strips{set_title(title, width_mm, text_mm)};
  for (const std::string& line : lines)
    append(strips, set_item(line, width_mm, {text_mm, false, TextAnchor::start}));
  strips.push_back(gap(kGap));
  return strips;
}

Strips first_head(const DebriefReport& report, double width_mm) {
  Strips strips = set_text("Debrief: " + report.title, width_mm, {kTitle, true, TextAnchor::start});
  strips.push_back(gap(0.8));
  append(strips, set_fields(report.heading, width_mm));
  strips.push_back(gap(1.5));
  return strips;
}

Strips later_head(const DebriefReport& report, std::size_t page, double width_mm) {
  Strip strip;
  append(
      strip,
      set_text("Debrief: " + report.title, 0.8 * width_mm, {1.2 * kText, true, TextAnchor::start}),
      {0, 0});
  append(strip, set_text(fmt::format("page {}", page), width_mm, {kText, false, TextAnchor::end}),
         {0, 0});
  return {std::move(strip), gap(1.5)};
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
                                  : later_head(report, page, width_mm);
               },
               set_foot(report, width), "Debrief: " + report.title, "Debrief report"});
  pages.put({set_key_figures(report.key_figures, width)});
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
