#include "formats/html_markup.hpp"

#include <fmt/format.h>

#include "formats/xml_text.hpp"

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
