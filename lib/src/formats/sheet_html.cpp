#include <fmt/format.h>

#include <algorithm>

#include "formats/sheet_parts.hpp"
#include "formats/xml_text.hpp"
#include "sweepwright/formats/profile_chart.hpp"
#include "sweepwright/formats/sheet.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kBlankLine = 13;  // mm: room for a line of handwriting
constexpr PaperSize kProfileOnSheet{190, 84};
constexpr double kLongCallsign = 10;  // ems

class Html {
 public:
  /// `<tag class="name">`, closed when the object goes.
  class Open {
   public:
    Open(std::string& out, std::string_view tag, std::string_view name) : out_(out), tag_(tag) {
      out_ += fmt::format("<{}", tag);
      if (!name.empty()) out_ += fmt::format(" class=\"{}\"", name);
      out_ += ">";
    }
    Open(const Open&) = delete;
    Open& operator=(const Open&) = delete;
    ~Open() { out_ += fmt::format("</{}>\n", tag_); }

   private:
    std::string& out_;
    std::string_view tag_;
  };

  [[nodiscard]] Open open(std::string_view tag, std::string_view name = {}) {
    return Open(out_, tag, name);
  }
  void element(std::string_view tag, std::string_view text, std::string_view name = {}) {
    const Open opened = open(tag, name);
    append_xml_text(out_, text);
  }
  /// Mark-up made elsewhere.
  void raw(std::string_view markup) { out_ += markup; }
  std::string take() { return std::move(out_); }

 private:
  std::string out_;
};

void write_fields(Html& html, const std::vector<SheetField>& fields) {
  const auto list = html.open("dl", "fields");
  for (const SheetField& field : fields) {
    html.element("dt", field.name);
    html.element("dd", field.value);
  }
}

void write_block(Html& html, const SheetBlock& block) {
  const auto section = html.open("section");
  html.element("h2", block.title);
  if (!block.fields.empty()) write_fields(html, block.fields);
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
  write_fields(html, sheet.heading);
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

/// Cautions and origin, at the foot of every page.
void write_end(Html& html, const Sheet& sheet) {
  {
    const auto cautions = html.open("section", "cautions");
    std::string text;
    for (const std::string& caution : sheet.cautions) text += (text.empty() ? "" : " ") + caution;
    html.element("p", text);
  }
  const auto footer = html.open("footer", "footer");
  html.element("p", sheet.origin);
}

void write_first_page(Html& html, const Sheet& sheet) {
  const auto page = html.open("main", "page");
  write_heading(html, sheet);
  write_key_figures(html, sheet);
  write_main(html, sheet);
  write_under(html, sheet);
  write_end(html, sheet);
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
  write_end(html, sheet);
}

void write_debrief_page(Html& html, const Sheet& sheet) {
  const auto page = html.open("section", "page");
  write_names(html, sheet);
  write_debrief(html, sheet);
  write_end(html, sheet);
}

}  // namespace

std::string write_sheet_html(const Sheet& sheet) {
  Html html;
  html.raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
  html.raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
  html.element("title", sheet.title);
  html.raw("<style>");
  html.raw(sheet_style());
  html.raw("</style>\n</head>\n");
  {
    const auto body = html.open("body");
    write_first_page(html, sheet);
    write_legs_page(html, sheet);
    write_debrief_page(html, sheet);
  }
  html.raw("</html>\n");
  return html.take();
}

}  // namespace sweepwright::formats
