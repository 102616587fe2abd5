#include <fmt/format.h>

#include "formats/xml_text.hpp"
#include "sweepwright/formats/debrief_report.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::string_view kStyle = R"css(
@page { margin: 10mm; }
* { box-sizing: border-box; }
body { margin: 6mm auto; width: min(277mm, 100% - 6mm); color: #000; background: #fff;
  font: 9pt/1.25 'Liberation Sans', Arial, Helvetica, 'DejaVu Sans Condensed', sans-serif;
  font-variant-numeric: tabular-nums; }
h1, h2, p, dl, dd, ul { margin: 0; padding: 0; }
h1 { font-size: 17pt; line-height: 1.2; overflow-wrap: anywhere; }
h2 { font-size: 9pt; background: #e6e6e6; border-top: 0.3mm solid #000; padding: 0.3mm 1mm;
  margin: 2.5mm 0 0.4mm; break-after: avoid; }
dl.fields { display: grid; grid-template-columns: 34mm 1fr; column-gap: 2mm; }
dl.fields dd { font-weight: bold; overflow-wrap: anywhere; white-space: pre-line; }
.key { display: flex; flex-wrap: wrap; border: 0.5mm solid #000; margin-top: 1.5mm; }
.key div { flex: 1 1 auto; padding: 0.3mm 1.5mm; }
.key dt { font-size: 7.2pt; }
.key dd { font-size: 13pt; font-weight: bold; }
section { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; }
td, th { padding: 0.2mm 1mm; text-align: right; vertical-align: top; }
th { font-size: 8pt; border-bottom: 0.3mm solid #000; vertical-align: bottom; }
.text { text-align: left; overflow-wrap: anywhere; }
tbody tr { border-bottom: 0.1mm solid #aaa; break-inside: avoid; }
.note, .footer { font-size: 8pt; overflow-wrap: anywhere; }
ul { list-style: square; padding: 0 1mm 0 4mm; }
li { overflow-wrap: anywhere; }
.drawing { margin-top: 3mm; break-inside: avoid; }
.drawing svg { display: block; width: 100%; max-width: 240mm; margin: 0 auto; height: auto; }
.cautions { border: 0.5mm solid #000; padding: 0.5mm 1.2mm; font-weight: bold; margin-top: 3mm; }
)css";

void add(std::string& html, std::string_view tag, std::string_view text,
         std::string_view name = {}) {
  html += fmt::format("<{}", tag);
  if (!name.empty()) html += fmt::format(" class=\"{}\"", name);
  html += ">";
  append_xml_text(html, text);
  html += fmt::format("</{}>\n", tag);
}

void add_fields(std::string& html, const std::vector<SheetField>& fields) {
  html += "<dl class=\"fields\">\n";
  for (const SheetField& field : fields) {
    add(html, "dt", field.name);
    add(html, "dd", field.value);
  }
  html += "</dl>\n";
}

void add_key_figures(std::string& html, const std::vector<SheetField>& figures) {
  html += "<dl class=\"key\">\n";
  for (const SheetField& field : figures) {
    html += "<div>";
    add(html, "dt", field.name);
    add(html, "dd", field.value);
    html += "</div>\n";
  }
  html += "</dl>\n";
}

void add_table(std::string& html, const ReportTable& table) {
  html += "<section>\n";
  add(html, "h2", table.title);
  if (!table.rows.empty()) {
    html += "<table>\n<thead><tr>\n";
    for (const ReportColumn& column : table.columns) {
      add(html, "th", column.head, column.is_text ? "text" : "");
    }
    html += "</tr></thead>\n<tbody>\n";
    for (const std::vector<std::string>& cells : table.rows) {
      html += "<tr>\n";
      for (std::size_t i = 0; i < cells.size(); ++i) {
        add(html, "td", cells[i], table.columns[i].is_text ? "text" : "");
      }
      html += "</tr>\n";
    }
    html += "</tbody>\n</table>\n";
  }
  if (!table.note.empty()) add(html, "p", table.note, "note");
  html += "</section>\n";
}

void add_list(std::string& html, std::string_view title, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  html += "<section>\n";
  add(html, "h2", title);
  html += "<ul>\n";
  for (const std::string& line : lines) add(html, "li", line);
  html += "</ul>\n</section>\n";
}

void add_drawing(std::string& html, const Drawing& drawing) {
  html += "<div class=\"drawing\">\n";
  html += write_svg(drawing, SvgForm::inlined);
  html += "</div>\n";
}

}  // namespace

std::string write_debrief_html(const DebriefReport& report) {
  std::string html =
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n";
  add(html, "title", "Debrief: " + report.title);
  html += fmt::format("<style>{}</style>\n</head>\n<body>\n", kStyle);
  add(html, "h1", "Debrief: " + report.title);
  add_fields(html, report.heading);
  add_key_figures(html, report.key_figures);
  add_table(html, report.sectors);
  add_drawing(html, report.map);
  for (const ReportTable* table : {&report.flying, &report.holes, &report.sightings, &report.belief,
                                   &report.proposal, &report.uses}) {
    add_table(html, *table);
  }
  add_drawing(html, report.chart);
  add_list(html, "To know", report.remarks);
  add_list(html, "Read from the logs and reports, and left out", report.dropped);
  std::string cautions;
  for (const std::string& caution : report.cautions) {
    cautions += (cautions.empty() ? "" : " ") + caution;
  }
  add(html, "p", cautions, "cautions");
  add(html, "p", report.origin, "footer");
  for (const std::string& line : report.footer) add(html, "p", line, "footer");
  html += "</body>\n</html>\n";
  return html;
}

}  // namespace sweepwright::formats
