#include "sweepwright/formats/sheet_pages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "formats/page_parts.hpp"
#include "formats/pages.hpp"
#include "sweepwright/formats/map.hpp"
#include "sweepwright/formats/profile_chart.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::array<Paper, 3> kPapers{Paper{"a4", "A4", {210, 297}},
                                       Paper{"letter", "US letter", {215.9, 279.4}},
                                       Paper{"a5", "A5, kneeboard", {148, 210}}};

/// Sizes of text that differ with the paper, in mm.
struct Look {
  bool narrow;  ///< one column of blocks, the map above it
  double margin;
  double text;    ///< of fields and paragraphs
  double key;     ///< of key figures
  double legs;    ///< of the leg table
  double sector;  ///< of the sector's name in the head
  double names;   ///< width of the names of fields
};

Look look_of(const Paper& paper) {
  if (paper.size.width_mm < 180) return {true, 6, 2.5, 3.5, 2.4, 6, 21};
  return {false, 8, 3, 4.2, 3, 7, 25};
}

constexpr double kGap = 2;  // mm between columns and blocks
constexpr double kProfileHeight = 84;

/// Sector in a frame and callsign; returns where they end on the right.
double add_names(Strip& strip, const Sheet& sheet, double size_mm, double most_mm) {
  const double sector = measured_width_mm(sheet.sector, {size_mm, true, TextAnchor::start});
  const double frame = sector + 0.8 * size_mm;
  const double height = 1.5 * size_mm;
  strip.elements.push_back(frame_element({0.3, 0.3, frame, height}, 0.7));
  strip.elements.push_back(big_text(sheet.sector, {0.4 * size_mm, height / 2}, size_mm));
  const double left = frame + 0.4 * size_mm;
  double name_size = 0.85 * size_mm;
  double width = measured_width_mm(sheet.callsign, {name_size, true, TextAnchor::start});
  if (left + width > most_mm) {
    name_size = std::max(2.4, name_size * (most_mm - left) / width);
    width = measured_width_mm(sheet.callsign, {name_size, true, TextAnchor::start});
  }
  strip.elements.push_back(big_text(sheet.callsign, {left, height / 2}, name_size));
  strip.height_mm = std::max(strip.height_mm, height + 0.5);
  return left + width;
}

/// The head of the first page: names, and the incident beside or under them.
Strips first_head(const Sheet& sheet, const Look& look, double width_mm) {
  Strip strip;
  const double names = width_mm * (look.narrow ? 1 : 0.36);
  add_names(strip, sheet, look.sector, names);
  const TextLook text{look.text, true, TextAnchor::start};
  Strips strips;
  if (look.narrow) {
    strips.push_back(std::move(strip));
    append(strips, set_fields(sheet.heading, width_mm, look.names + 4, text));
  } else {
    const double left = names + kGap;
    append(strip, set_fields(sheet.heading, width_mm - left, look.names + 6, text), {left, 0});
    strips.push_back(std::move(strip));
  }
  strips.push_back(gap(1));
  return strips;
}

Strips later_head(const Sheet& sheet, const Look& look, std::size_t page, double width_mm) {
  Strip strip;
  add_names(strip, sheet, 0.75 * look.sector, 0.7 * width_mm);
  append(strip,
         set_text(fmt::format("{}\npage {}", sheet.heading.front().value, page), width_mm,
                  {look.text, false, TextAnchor::end}),
         {0, 0});
  return {std::move(strip), gap(1)};
}

Strips set_block(const SheetBlock& block, double width_mm, const Look& look) {
  const TextLook text{look.text, false, TextAnchor::start};
  Strips strips{set_title(block.title, width_mm, look.text)};
  append(strips, set_fields(block.fields, width_mm, look.names, text));
  for (const std::string& line : block.lines) append(strips, set_item(line, width_mm, text));
  strips.push_back(gap(1));
  return strips;
}

Strips set_blocks(const std::vector<SheetBlock>& blocks, double width_mm, const Look& look) {
  Strips strips;
  for (const SheetBlock& block : blocks) append(strips, set_block(block, width_mm, look));
  return strips;
}

Strips set_working(const Sheet& sheet, double width_mm, const Look& look) {
  const std::vector<Column> columns{{"", 0.26 * width_mm, TextAnchor::start},
                                    {"", 0.56 * width_mm, TextAnchor::start},
                                    {"", 0.18 * width_mm, TextAnchor::end}};
  std::vector<Row> rows;
  for (const SheetStep& step : sheet.working) {
    rows.push_back(
        {{step.name, step.expression, step.value.empty() ? "" : "= " + step.value}, false});
  }
  Strips strips{set_title(sheet.working_title, width_mm, look.text)};
  append(strips, set_rows(columns, rows, 0.95 * look.text));
  strips.push_back(gap(1));
  return strips;
}

/// Assignment and map.
void put_assignment(Pages& pages, const Sheet& sheet, const Look& look, const plan::Plan& plan,
                    std::size_t index) {
  pages.put(set_key_figures(sheet.key_figures, look.narrow ? 2 : 3, pages.width_mm(),
                            0.85 * look.text, look.key));
  pages.space(kGap);
  if (look.narrow) {
    const PaperSize size{pages.width_mm(), 0.7 * pages.width_mm()};
    pages.put_drawing(draw_sector_map(plan, index, size), {pages.margin_mm(), pages.cursor_mm()});
    pages.space(size.height_mm + 1);
    pages.put(set_blocks(sheet.assignment, pages.width_mm(), look));
    pages.put(set_block(sheet.instructions, pages.width_mm(), look));
    return;
  }
  const double blocks = 0.42 * pages.width_mm();
  const double right = blocks + kGap;
  const double map_width = pages.width_mm() - right;
  Strips left = set_blocks(sheet.assignment, blocks, look);
  append(left, set_block(sheet.facts.front(), blocks, look));
  const Strips under = set_block(sheet.instructions, map_width, look);
  // The map takes what the instructions under it leave of the page, within reason.
  const double map_height =
      std::clamp(pages.left_mm() - height_mm(under) - 1.1 * kGap, map_width * 0.9, map_width * 1.6);
  pages.put_drawing(draw_sector_map(plan, index, {map_width, map_height}),
                    {pages.margin_mm() + right, pages.cursor_mm()});
  Strips beside{gap(map_height + kGap)};
  append(beside, under);
  pages.put_columns({{0, left}, {right, beside}});
}

void put_legs(Pages& pages, const Sheet& sheet, const Look& look) {
  const double width = pages.width_mm();
  const bool fuel = !sheet.leg_heads.fuel.empty();
  const bool heights = sheet.leg_heads.heights;
  // Shares of the width; the last column takes what is left of it, and no less than it needs.
  std::vector<Column> columns{{"Leg", 0.07},   {"Track °T", 0.1}, {"Hdg °M", 0.085},
                              {"GS kt", 0.07}, {"NM", 0.085},     {"Time", 0.095},
                              {"At", 0.1},     {"Total", 0.095}};
  if (fuel) columns.push_back({sheet.leg_heads.fuel, 0.08});
  if (heights) columns.insert(columns.end(), {{"Alt ft", 0.075}, {"MSA ft", 0.075}});
  double taken = 0;
  for (const Column& column : columns) taken += column.width_mm;
  columns.push_back({"End of leg", std::max(0.22, 1 - taken), TextAnchor::start});
  taken += columns.back().width_mm;
  for (Column& column : columns) column.width_mm *= width / taken;
  std::vector<Row> rows;
  for (const SheetLeg& leg : sheet.legs) {
    Row row{{leg.number, leg.track, leg.magnetic_heading, leg.ground_speed_kt, leg.distance_nm,
             leg.time, leg.clock, leg.total_time},
            leg.search};
    if (fuel) row.cells.push_back(leg.total_fuel);
    if (heights) row.cells.insert(row.cells.end(), {leg.altitude_ft, leg.safe_altitude_ft});
    row.cells.push_back(leg.end);
    rows.push_back(std::move(row));
  }
  const Strip head = set_heads(columns, look.legs);
  Strips strips{set_title("Legs. " + sheet.leg_totals, width, look.text), head};
  append(strips, set_rows(columns, rows, look.legs));
  strips.push_back(gap(0.6));
  append(strips, set_text(sheet.legs_note, width, {look.text, false, TextAnchor::start}));
  strips.push_back(gap(kGap));
  pages.put(strips, {head});
}

/// The findings, and the profile of the flight as wide as the page.
void put_findings(Pages& pages, const Sheet& sheet, const Look& look) {
  if (!sheet.heights.lines.empty()) pages.put(set_block(sheet.heights, pages.width_mm(), look));
  if (!sheet.findings.lines.empty()) {
    pages.put(set_block(sheet.findings, pages.width_mm(), look));
  }
  if (!sheet.profile) return;
  const PaperSize size{pages.width_mm(), kProfileHeight};
  if (pages.left_mm() < size.height_mm) pages.begin_page();
  pages.put_drawing(draw_profile(*sheet.profile, size), {pages.margin_mm(), pages.cursor_mm()});
  pages.space(size.height_mm + kGap);
}

void put_debrief(Pages& pages, const Sheet& sheet, const Look& look) {
  Strips strips{set_title("Debrief, filled in by the crew", pages.width_mm(), look.text)};
  constexpr double kWritingLine = 8;  // mm
  const double name = 1.3 * look.text;
  double room = pages.left_mm() - strips.front().height_mm;
  double lines = 0;
  for (const SheetBlankRow& row : sheet.debrief) {
    room -= name;
    lines += row.lines;
  }
  const double line = std::max(kWritingLine, room / lines * 0.98);
  for (const SheetBlankRow& row : sheet.debrief) {
    strips.push_back(
        set_blanks(row.names, name + line * row.lines, pages.width_mm(), 0.9 * look.text));
  }
  pages.put(strips);
}

}  // namespace

std::span<const Paper> papers() {
  return kPapers;
}

std::vector<Drawing> set_sheet(const plan::Plan& plan, std::size_t index,
                               const Provenance& provenance, const Paper& paper) {
  const Sheet sheet = make_sheet(plan, index, provenance);
  const Look look = look_of(paper);
  const double width = paper.size.width_mm - 2 * look.margin;
  Pages pages({paper.size, look.margin,
               [&](std::size_t page, double width_mm) {
                 return page == 1 ? first_head(sheet, look, width_mm)
                                  : later_head(sheet, look, page, width_mm);
               },
               set_foot(sheet.cautions, sheet.origin, width, look.text), sheet.title,
               "Crew assignment sheet"});
  put_assignment(pages, sheet, look, plan, index);
  pages.begin_page();
  put_legs(pages, sheet, look);
  put_findings(pages, sheet, look);
  pages.put(set_block(sheet.facts.back(), width, look));
  pages.put(set_working(sheet, width, look));
  for (const std::string& line : sheet.footer) {
    pages.put(set_text(line, width, {1.9, false, TextAnchor::start}));
  }
  pages.begin_page();
  put_debrief(pages, sheet, look);
  return pages.take();
}

}  // namespace sweepwright::formats
