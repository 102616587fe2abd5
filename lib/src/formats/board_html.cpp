#include "formats/board_parts.hpp"
#include "formats/html_markup.hpp"
#include "sweepwright/formats/board.hpp"

namespace sweepwright::formats {
namespace {

/// What a page that lies on its long side has in place of the usual look.
constexpr std::string_view kLying = R"css(
@page { size: landscape; margin: 8mm; }
dl.fields { grid-template-columns: 30mm 1fr 26mm 1.4fr; }
)css";

}  // namespace
std::string write_board_html(const Board& board) {
  Html html;
  html.head("Board: " + board.title, std::string(report_style()) + std::string(kLying));
  {
    const auto body = html.open("body");
    {
      const auto main = html.open("main");
      html.element("h1", board.title);
      html.fields(board.heading);
      html.key_figures(board.key_figures);
      html.table(board.crews);
      html.drawing("timeline", board.timeline);
      html.table(board.times);
      html.table(board.frequencies);
      if (!board.findings.rows.empty()) html.table(board.findings);
      html.list("Hazards", board.hazards);
      html.list("To know", board.remarks);
      html.drawing("map", board.map);
    }
    html.end_of_page(board.cautions, board.origin);
    for (const std::string& line : board.footer) html.element("p", line, "footer");
  }
  return html.take();
}

}  // namespace sweepwright::formats
