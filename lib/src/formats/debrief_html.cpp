#include "formats/html_markup.hpp"
#include "sweepwright/formats/debrief_report.hpp"

namespace sweepwright::formats {

std::string write_debrief_html(const DebriefReport& report) {
  const std::string title = "Debrief: " + report.title;
  Html html;
  html.head(title, report_style());
  {
    const auto body = html.open("body");
    {
      const auto main = html.open("main");
      html.element("h1", title);
      html.fields(report.heading);
      html.key_figures(report.key_figures);
      html.table(report.sectors);
      html.drawing("map", report.map);
      for (const ReportTable* table : {&report.flying, &report.holes, &report.sightings,
                                       &report.belief, &report.proposal, &report.uses}) {
        html.table(*table);
      }
      html.drawing("chart", report.chart);
      html.list("To know", report.remarks);
      html.list("Read from the logs and reports, and left out", report.dropped);
    }
    html.end_of_page(report.cautions, report.origin);
    for (const std::string& line : report.footer) html.element("p", line, "footer");
  }
  return html.take();
}

}  // namespace sweepwright::formats
