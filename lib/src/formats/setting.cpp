#include "formats/setting.hpp"

#include <algorithm>
#include <map>
#include <memory>
#include <type_traits>

#include "formats/cairo_painter.hpp"
#include "formats/utf8.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kLineHeight = 1.22;  // of the size
constexpr double kPadding = 0.8;      // mm beside the text of a cell
constexpr Colour kGrey{0xe6, 0xe6, 0xe6};
constexpr Colour kHairGrey{0xaa, 0xaa, 0xaa};

/// Measures texts; keeps what it needs for that.
class Ruler {
 public:
  Ruler()
      : surface_(cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1)),
        context_(cairo_create(surface_.get())) {}

  double width_mm(std::string_view text, const TextLook& look) {
    const auto key = std::pair(look.size_mm, look.bold);
    auto found = layouts_.find(key);
    if (found == layouts_.end()) {
      found = layouts_
                  .emplace(key, make_layout(context_.get(), look.size_mm * kPointsPerMillimetre,
                                            look.bold))
                  .first;
    }
    PangoLayout* const layout = found->second.get();
    pango_layout_set_text(layout, text.data(), static_cast<int>(text.size()));
    PangoRectangle box;
    pango_layout_line_get_extents(pango_layout_get_line_readonly(layout, 0), nullptr, &box);
    return pango_units_to_double(box.width) / kPointsPerMillimetre;
  }

 private:
  CairoSurface surface_;
  CairoContext context_;
  std::map<std::pair<double, bool>, PangoLayoutPointer> layouts_;
};

/// Where `text` must be cut so that it is not wider than `width_mm`: at least one character.
std::size_t fitting(std::string_view text, double width_mm, const TextLook& look) {
  std::size_t end = 0;
  while (end < text.size()) {
    const std::size_t next = end + std::max<std::size_t>(character_length(text.substr(end)), 1);
    if (end > 0 && measured_width_mm(text.substr(0, next), look) > width_mm) break;
    end = next;
  }
  return end;
}

void break_paragraph(std::string_view text, double width_mm, const TextLook& look,
                     std::vector<std::string>& lines) {
  std::string line;
  while (true) {
    const std::size_t blank = text.find(' ');
    std::string word(text.substr(0, blank));
    const std::string longer = line.empty() ? word : line + " " + word;
    if (measured_width_mm(longer, look) <= width_mm) {
      line = longer;
    } else {
      if (!line.empty()) lines.push_back(line);
      while (measured_width_mm(word, look) > width_mm) {
        const std::size_t cut = fitting(word, width_mm, look);
        if (cut >= word.size()) break;
        lines.push_back(word.substr(0, cut));
        word.erase(0, cut);
      }
      line = word;
    }
    if (blank == std::string_view::npos) break;
    text.remove_prefix(blank + 1);
  }
  lines.push_back(line);
}

Element text_element(std::string text, PaperPoint at, const TextLook& look) {
  Text element;
  element.at = at;
  element.text = std::move(text);
  element.size_mm = look.size_mm;
  element.bold = look.bold;
  element.anchor = look.anchor;
  return {element};
}

Element rule(double left_mm, double right_mm, double y_mm, double width_mm, Colour colour) {
  return {Line{{{left_mm, y_mm}, {right_mm, y_mm}}, {colour, width_mm, {}}}};
}

double line_height(double size_mm) {
  return kLineHeight * size_mm;
}

double anchored(TextAnchor anchor, double left_mm, double width_mm) {
  if (anchor == TextAnchor::start) return left_mm + kPadding;
  if (anchor == TextAnchor::end) return left_mm + width_mm - kPadding;
  return left_mm + width_mm / 2;
}

struct ShiftBy {
  PaperPoint by;

  void operator()(PaperPoint& point) const {
    point.x_mm += by.x_mm;
    point.y_mm += by.y_mm;
  }
  void operator()(PaperLine& line) const {
    for (PaperPoint& point : line) (*this)(point);
  }
  void operator()(Line& line) const { (*this)(line.points); }
  void operator()(Shape& shape) const {
    for (PaperLine& ring : shape.rings) (*this)(ring);
  }
  void operator()(Disc& disc) const { (*this)(disc.centre); }
  void operator()(Text& text) const { (*this)(text.at); }
  void operator()(Group& group) const {
    for (Element& element : group.elements) shift(element, by);
    if (!group.clip) return;
    group.clip->left_mm += by.x_mm;
    group.clip->right_mm += by.x_mm;
    group.clip->top_mm += by.y_mm;
    group.clip->bottom_mm += by.y_mm;
  }
};

}  // namespace

double height_mm(const Strips& strips) {
  double height = 0;
  for (const Strip& strip : strips) height += strip.height_mm;
  return height;
}

void shift(Element& element, PaperPoint by) {
  std::visit(ShiftBy{by}, element.what);
}

double measured_width_mm(std::string_view text, const TextLook& look) {
  // One for each thread: pango's layouts are not for sharing, and making one is slow.
  thread_local Ruler ruler;
  return ruler.width_mm(text, look);
}

std::vector<std::string> broken_lines(std::string_view text, double width_mm,
                                      const TextLook& look) {
  std::vector<std::string> lines;
  while (true) {
    const std::size_t feed = text.find('\n');
    break_paragraph(text.substr(0, feed), width_mm, look, lines);
    if (feed == std::string_view::npos) return lines;
    text.remove_prefix(feed + 1);
  }
}

Strips set_text(std::string_view text, double width_mm, const TextLook& look) {
  Strips strips;
  const double height = line_height(look.size_mm);
  for (std::string& line : broken_lines(text, width_mm - 2 * kPadding, look)) {
    strips.push_back(
        {height,
         {text_element(std::move(line), {anchored(look.anchor, 0, width_mm), height / 2}, look)}});
  }
  return strips;
}

Strip set_title(std::string_view title, double width_mm, double size_mm) {
  const double bar = 1.5 * size_mm;
  Strip strip;
  strip.height_mm = bar + 0.4;
  strip.with_next = true;
  strip.elements.push_back(
      {Shape{{{{0, 0}, {width_mm, 0}, {width_mm, bar}, {0, bar}}}, {}, kGrey, {}}});
  strip.elements.push_back(rule(0, width_mm, 0, 0.3, kBlack));
  strip.elements.push_back(
      text_element(std::string(title), {kPadding, bar / 2}, {size_mm, true, TextAnchor::start}));
  return strip;
}

Strips set_field(std::string_view name, std::string_view value, double width_mm, double name_mm,
                 const TextLook& look) {
  TextLook name_look = look;
  name_look.bold = false;
  name_look.size_mm = 0.9 * look.size_mm;
  Strips strips = set_text(value, width_mm - name_mm, look);
  for (Strip& strip : strips) {
    for (Element& element : strip.elements) shift(element, {name_mm, 0});
  }
  const Strips names = set_text(name, name_mm, name_look);
  while (strips.size() < names.size()) strips.push_back({line_height(look.size_mm), {}});
  for (std::size_t i = 0; i < names.size(); ++i) {
    for (Element element : names[i].elements) {
      // Names are smaller; they stand on the same height as the line beside them.
      shift(element, {0, (strips[i].height_mm - names[i].height_mm) / 2});
      strips[i].elements.push_back(std::move(element));
    }
  }
  if (value.empty()) {
    strips[0].elements.push_back(
        rule(name_mm + kPadding, width_mm - kPadding, strips[0].height_mm - 0.3, 0.2, kBlack));
  }
  return strips;
}

Strips set_item(std::string_view text, double width_mm, const TextLook& look) {
  const double indent = 1.1 * look.size_mm;
  Strips strips = set_text(text, width_mm - indent, look);
  for (Strip& strip : strips) {
    for (Element& element : strip.elements) shift(element, {indent, 0});
  }
  const double half = 0.16 * look.size_mm;
  const double x = kPadding + half;
  const double y = strips[0].height_mm / 2;
  strips[0].elements.push_back({Shape{
      {{{x - half, y - half}, {x + half, y - half}, {x + half, y + half}, {x - half, y + half}}},
      {},
      kBlack,
      {}}});
  return strips;
}

Strip set_blanks(const std::vector<std::string>& names, double height_mm, double width_mm,
                 double size_mm) {
  Strip strip;
  strip.height_mm = height_mm;
  const double each = width_mm / static_cast<double>(names.size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    const double left = each * static_cast<double>(i);
    strip.elements.push_back(
        {Shape{{{{left, 0}, {left + each, 0}, {left + each, height_mm}, {left, height_mm}}},
               Stroke{kBlack, 0.2, {}},
               {},
               {}}});
    double y = 0.5;
    for (Strip& line : set_text(names[i], each, {size_mm, false, TextAnchor::start})) {
      for (Element& element : line.elements) {
        shift(element, {left, y});
        strip.elements.push_back(std::move(element));
      }
      y += line.height_mm;
    }
  }
  return strip;
}

Strip set_heads(const std::vector<Column>& columns, double size_mm) {
  std::vector<std::string> heads;
  for (const Column& column : columns) heads.push_back(column.head);
  const Strips rows = set_rows(columns, {{heads, true}}, size_mm);
  Strip strip = rows.front();
  double width = 0;
  for (const Column& column : columns) width += column.width_mm;
  strip.elements.push_back(rule(0, width, strip.height_mm, 0.25, kBlack));
  strip.with_next = true;
  return strip;
}

Strips set_rows(const std::vector<Column>& columns, const std::vector<Row>& rows, double size_mm) {
  Strips strips;
  const double line = line_height(size_mm);
  for (const Row& row : rows) {
    Strip strip;
    double left = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const TextLook look{size_mm, row.bold, columns[i].anchor};
      const double width = columns[i].width_mm;
      double y = line / 2;
      for (std::string& part : broken_lines(row.cells[i], width - 2 * kPadding, look)) {
        if (!part.empty()) {
          strip.elements.push_back(
              text_element(std::move(part), {anchored(look.anchor, left, width), y}, look));
        }
        y += line;
      }
      strip.height_mm = std::max(strip.height_mm, y - line / 2);
      left += width;
    }
    strip.elements.push_back(rule(0, left, strip.height_mm, 0.1, kHairGrey));
    strips.push_back(std::move(strip));
  }
  return strips;
}

}  // namespace sweepwright::formats
