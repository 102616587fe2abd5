#include "formats/page_parts.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace sweepwright::formats {
namespace {

constexpr double kOriginText = 1.9;  // mm

}  // namespace

void append(Strips& strips, Strips more) {
  for (Strip& strip : more) strips.push_back(std::move(strip));
}

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

Element frame_element(const PaperBox& box, double line_mm) {
  return {Shape{{{{box.left_mm, box.top_mm},
                  {box.right_mm, box.top_mm},
                  {box.right_mm, box.bottom_mm},
                  {box.left_mm, box.bottom_mm}}},
                Stroke{kBlack, line_mm, {}},
                {},
                {}}};
}

Element big_text(std::string text, PaperPoint at, double size_mm) {
  Text element;
  element.at = at;
  element.text = std::move(text);
  element.size_mm = size_mm;
  element.bold = true;
  element.anchor = TextAnchor::start;
  return {element};
}

Strips set_fields(const std::vector<SheetField>& fields, double width_mm, double names_mm,
                  const TextLook& look) {
  Strips strips;
  for (const SheetField& field : fields) {
    append(strips, set_field(field.name, field.value, width_mm, names_mm, look));
  }
  return strips;
}

Strips set_key_figures(const std::vector<SheetField>& figures, std::size_t across, double width_mm,
                       double name_mm, double value_mm) {
  constexpr double kAir = 2;  // mm beside a value
  const double each = width_mm / static_cast<double>(across);
  const double height = 1.3 * name_mm + 1.45 * value_mm;
  Strips strips;
  for (std::size_t i = 0; i < figures.size(); i += across) {
    Strip strip;
    for (std::size_t j = i; j < std::min(i + across, figures.size()); ++j) {
      const double left = each * static_cast<double>(j - i);
      append(strip, set_text(figures[j].name, each, {name_mm, false, TextAnchor::start}),
             {left, 0.2});
      double size = value_mm;
      const double width = measured_width_mm(figures[j].value, {size, true, TextAnchor::start});
      if (width > each - kAir) size *= (each - kAir) / width;
      strip.elements.push_back(
          big_text(figures[j].value, {left + 0.8, height - 0.75 * value_mm}, size));
      strip.elements.push_back(frame_element({left, 0, left + each, height}, 0.3));
    }
    strip.height_mm = height;
    strips.push_back(std::move(strip));
  }
  return strips;
}

Strips set_foot(const std::vector<std::string>& cautions, const std::string& origin,
                double width_mm, double text_mm) {
  std::string text;
  for (const std::string& caution : cautions) text += (text.empty() ? "" : " ") + caution;
  Strip frame;
  append(frame, set_text(text, width_mm, {text_mm, true, TextAnchor::start}), {0, 0.7});
  frame.height_mm += 0.7;
  frame.elements.push_back(frame_element({0, 0, width_mm, frame.height_mm}, 0.5));
  Strips strips{gap(1), std::move(frame), gap(0.6)};
  append(strips, set_text(origin, width_mm, {kOriginText, false, TextAnchor::start}));
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
  strips.push_back(gap(kGapAfterTable));
  return strips;
}

Strips set_list(std::string_view title, const std::vector<std::string>& lines, double width_mm,
                double text_mm) {
  if (lines.empty()) return {};
  Strips strips{set_title(title, width_mm, text_mm)};
  for (const std::string& line : lines)
    append(strips, set_item(line, width_mm, {text_mm, false, TextAnchor::start}));
  strips.push_back(gap(kGapAfterTable));
  return strips;
}

Strips later_head(std::string_view title, std::size_t page, double width_mm, double text_mm) {
  Strip strip;
  append(strip, set_text(title, 0.8 * width_mm, {1.2 * text_mm, true, TextAnchor::start}), {0, 0});
  append(strip, set_text(fmt::format("page {}", page), width_mm, {text_mm, false, TextAnchor::end}),
         {0, 0});
  return {std::move(strip), gap(1.5)};
}

}  // namespace sweepwright::formats
