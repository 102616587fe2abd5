#include <fmt/format.h>

#include "formats/board_parts.hpp"
#include "formats/html_markup.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {
namespace {

void write_table(Html& html, const BoardTable& table) {
  const auto section = html.open("section");
  html.element("h2", table.title);
  if (!table.rows.empty()) {
    const auto opened = html.open("table");
    {
      const auto head = html.open("thead");
      const auto row = html.open("tr");
      for (const BoardColumn& column : table.columns) {
        html.element("th", column.head, column.is_text ? "text" : "");
      }
    }
    const auto body = html.open("tbody");
    for (const std::vector<std::string>& cells : table.rows) {
      const auto row = html.open("tr");
      for (std::size_t i = 0; i < cells.size(); ++i) {
        html.element("td", cells[i], table.columns[i].is_text ? "text" : "");
      }
    }
  }
  if (!table.note.empty()) html.element("p", table.note, "note");
}

void write_list(Html& html, std::string_view title, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  const auto section = html.open("section");
  html.element("h2", title);
  const auto list = html.open("ul");
  for (const std::string& line : lines) html.element("li", line);
}

void write_key_figures(Html& html, const std::vector<SheetField>& figures) {
  const auto list = html.open("dl", "key");
  for (const SheetField& field : figures) {
    const auto box = html.open("div");
    html.element("dt", field.name);
    html.element("dd", field.value);
  }
}

void write_drawing(Html& html, std::string_view name, const Drawing& drawing) {
  const auto box = html.open("div", name);
  html.raw(write_svg(drawing, SvgForm::inlined));
}

}  // namespace

std::string write_board_html(const Board& board) {
  Html html;
  html.head("Board: " + board.title, board_style());
  {
    const auto body = html.open("body");
    {
      const auto main = html.open("main");
      html.element("h1", board.title);
      html.fields(board.heading);
      write_key_figures(html, board.key_figures);
      write_table(html, board.crews);
      write_drawing(html, "timeline", board.timeline);
      write_table(html, board.times);
      write_table(html, board.frequencies);
      if (!board.findings.rows.empty()) write_table(html, board.findings);
      write_list(html, "Hazards", board.hazards);
      write_list(html, "To know", board.remarks);
      write_drawing(html, "map", board.map);
    }
    html.end_of_page(board.cautions, board.origin);
    for (const std::string& line : board.footer) html.element("p", line, "footer");
  }
  return html.take();
}

}  // namespace sweepwright::formats
