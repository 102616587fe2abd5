#include <fmt/format.h>

#include <algorithm>

#include "formats/html_markup.hpp"
#include "formats/sheet_parts.hpp"
#include "sweepwright/formats/profile_chart.hpp"
#include "sweepwright/formats/sheet.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kBlankLine = 13;  // mm: room for a line of handwriting
constexpr PaperSize kProfileOnSheet{190, 84};
constexpr double kLongCallsign = 10;  // ems

void write_block(Html& html, const SheetBlock& block) {
  const auto section = html.open("section");
  html.element("h2", block.title);
  if (!block.fields.empty()) html.fields(block.fields);
  if (block.lines.empty()) return;
  const auto list = html.open("ul");
  for (const std::string& line : block.lines) html.element("li", line);
}

void write_heading(Html& html, const Sheet& sheet) {
  const auto head = html.open("header", "head");
  {
    // A long callsign gets smaller letters, so that the rest of the heading keeps its room.
    const bool long_name = text_width_mm(sheet.callsign, 1, true) > kLongCallsign;
    const auto title = html.open("h1", long_name ? "long" : "");
    html.element("span", sheet.sector, "sector");
    html.element("span", sheet.callsign);
  }
  html.fields(sheet.heading);
}

void write_key_figures(Html& html, const Sheet& sheet) {
  const auto list = html.open("dl", "key");
  for (const SheetField& field : sheet.key_figures) {
    const auto box = html.open("div");
    html.element("dt", field.name);
    html.element("dd", field.value);
  }
}

void write_main(Html& html, const Sheet& sheet) {
  const auto main = html.open("div", "main");
  {
    const auto blocks = html.open("div", "blocks");
    for (const SheetBlock& block : sheet.assignment) write_block(html, block);
  }
  const auto map = html.open("div", "map");
  html.raw(write_svg(sheet.map, SvgForm::inlined));
}

void write_working(Html& html, const Sheet& sheet) {
  const auto section = html.open("section");
  html.element("h2", sheet.working_title);
  {
    const auto table = html.open("table", "working");
    const auto body = html.open("tbody");
    for (const SheetStep& step : sheet.working) {
      const auto row = html.open("tr");
      html.element("td", step.name);
      html.element("td", step.expression);
      html.element("td", step.value.empty() ? "" : "= " + step.value);
    }
  }
}

void write_under(Html& html, const Sheet& sheet) {
  const auto under = html.open("div", "under");
  write_block(html, sheet.facts.front());
  write_block(html, sheet.instructions);
}

void write_leg_heads(Html& html, const SheetLegHeads& heads) {
  const auto row = html.open("tr");
  for (const std::string_view name :
       {"Leg", "Track °T", "Hdg °M", "GS kt", "NM", "Time", "At", "Total"}) {
    html.element("th", name);
  }
  if (!heads.fuel.empty()) html.element("th", heads.fuel);
  if (heads.heights) {
    html.element("th", "Alt ft");
    html.element("th", "MSA ft");
  }
  html.element("th", "End of leg");
}

void write_leg_rows(Html& html, const Sheet& sheet) {
  const auto body = html.open("tbody");
  for (const SheetLeg& leg : sheet.legs) {
    const auto row = html.open("tr", leg.search ? "search" : "");
    for (const std::string& text :
         {leg.number, leg.track, leg.magnetic_heading, leg.ground_speed_kt, leg.distance_nm,
          leg.time, leg.clock, leg.total_time}) {
      html.element("td", text);
    }
    if (!sheet.leg_heads.fuel.empty()) html.element("td", leg.total_fuel);
    if (sheet.leg_heads.heights) {
      html.element("td", leg.altitude_ft);
      html.element("td", leg.safe_altitude_ft);
    }
    html.element("td", leg.end);
  }
}

void write_legs(Html& html, const Sheet& sheet) {
  const auto section = html.open("section");
  html.element("h2", "Legs. " + sheet.leg_totals);
  {
    const auto table = html.open("table", "legs");
    {
      const auto head = html.open("thead");
      write_leg_heads(html, sheet.leg_heads);
    }
    write_leg_rows(html, sheet);
  }
  html.element("p", sheet.legs_note, "note");
}

void write_debrief(Html& html, const Sheet& sheet) {
  const auto section = html.open("section", "debrief");
  html.element("h2", "Debrief, filled in by the crew");
  for (const SheetBlankRow& blanks : sheet.debrief) {
    const auto row = html.open("div", "row");
    for (const std::string& name : blanks.names) {
      html.raw(fmt::format("<div class=\"blank\" style=\"height: {:.1f}mm\">",
                           3 + kBlankLine * blanks.lines));
      html.element("span", name);
      html.raw("</div>\n");
    }
  }
}

void write_first_page(Html& html, const Sheet& sheet) {
  const auto page = html.open("main", "page");
  write_heading(html, sheet);
  write_key_figures(html, sheet);
  write_main(html, sheet);
  write_under(html, sheet);
  html.end_of_page(sheet.cautions, sheet.origin);
}

/// The head of a further page.
void write_names(Html& html, const Sheet& sheet) {
  const auto head = html.open("header", "head");
  const auto title = html.open("h1", "small");
  html.element("span", sheet.sector, "sector");
  html.element("span", sheet.callsign);
}

void write_legs_page(Html& html, const Sheet& sheet) {
  const auto page = html.open("section", "page");
  write_names(html, sheet);
  write_legs(html, sheet);
  if (!sheet.heights.lines.empty()) write_block(html, sheet.heights);
  if (!sheet.findings.lines.empty()) write_block(html, sheet.findings);
  if (sheet.profile) {
    const auto figure = html.open("div", "profile");
    html.raw(write_svg(draw_profile(*sheet.profile, kProfileOnSheet), SvgForm::inlined));
  }
  write_block(html, sheet.facts.back());
  write_working(html, sheet);
  for (const std::string& line : sheet.footer) html.element("p", line, "footer");
  html.end_of_page(sheet.cautions, sheet.origin);
}

void write_debrief_page(Html& html, const Sheet& sheet) {
  const auto page = html.open("section", "page");
  write_names(html, sheet);
  write_debrief(html, sheet);
  html.end_of_page(sheet.cautions, sheet.origin);
}

}  // namespace

std::string write_sheet_html(const Sheet& sheet) {
  Html html;
  html.head(sheet.title, sheet_style());
  {
    const auto body = html.open("body");
    write_first_page(html, sheet);
    write_legs_page(html, sheet);
    write_debrief_page(html, sheet);
  }
  return html.take();
}

}  // namespace sweepwright::formats
