#include "formats/html_markup.hpp"

#include <fmt/format.h>

#include "formats/xml_text.hpp"
#include "sweepwright/formats/svg_writer.hpp"

namespace sweepwright::formats {

Html::Open::Open(std::string& out, std::string_view tag, std::string_view name)
    : out_(out), tag_(tag) {
  out_ += fmt::format("<{}", tag);
  if (!name.empty()) out_ += fmt::format(" class=\"{}\"", name);
  out_ += ">";
}

Html::Open::~Open() {
  out_ += fmt::format("</{}>\n", tag_);
}

void Html::element(std::string_view tag, std::string_view text, std::string_view name) {
  const Open opened = open(tag, name);
  append_xml_text(out_, text);
}

void Html::fields(const std::vector<SheetField>& fields) {
  const auto list = open("dl", "fields");
  for (const SheetField& field : fields) {
    element("dt", field.name);
    element("dd", field.value);
  }
}

void Html::key_figures(const std::vector<SheetField>& figures) {
  const auto list = open("dl", "key");
  for (const SheetField& field : figures) {
    const auto box = open("div");
    element("dt", field.name);
    element("dd", field.value);
  }
}

void Html::table(const ReportTable& table) {
  const auto section = open("section");
  element("h2", table.title);
  if (!table.rows.empty()) {
    const auto opened = open("table");
    {
      const auto head = open("thead");
      const auto row = open("tr");
      for (const ReportColumn& column : table.columns) {
        element("th", column.head, column.is_text ? "text" : "");
      }
    }
    const auto body = open("tbody");
    for (const std::vector<std::string>& cells : table.rows) {
      const auto row = open("tr");
      for (std::size_t i = 0; i < cells.size(); ++i) {
        element("td", cells[i], table.columns[i].is_text ? "text" : "");
      }
    }
  }
  if (!table.note.empty()) element("p", table.note, "note");
}

void Html::list(std::string_view title, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  const auto section = open("section");
  element("h2", title);
  const auto list = open("ul");
  for (const std::string& line : lines) element("li", line);
}

void Html::drawing(std::string_view name, const Drawing& drawing) {
  const auto box = open("div", name);
  raw(write_svg(drawing, SvgForm::inlined));
}

void Html::head(std::string_view title, std::string_view style) {
  raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
  raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
  element("title", title);
  raw("<style>");
  raw(style);
  raw("</style>\n</head>\n");
}

void Html::end_of_page(const std::vector<std::string>& cautions, std::string_view origin) {
  {
    const auto section = open("section", "cautions");
    std::string text;
    for (const std::string& caution : cautions) text += (text.empty() ? "" : " ") + caution;
    element("p", text);
  }
  const auto footer = open("footer", "footer");
  element("p", origin);
}

std::string Html::take() {
  raw("</html>\n");
  return std::move(out_);
}

}  // namespace sweepwright::formats
