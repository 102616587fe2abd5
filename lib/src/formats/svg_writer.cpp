#include "sweepwright/formats/svg_writer.hpp"

#include <fmt/format.h>

#include <cmath>

#include "formats/xml_text.hpp"
#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

/// The size of the font that puts `Text::at` half way up the capitals: they are 0.72 of it high.
constexpr double kHalfCapital = 0.36;

constexpr std::string_view kFonts =
    "'Liberation Sans', Arial, Helvetica, 'DejaVu Sans Condensed', sans-serif";

/// 0.01 mm, without trailing zeros.
std::string number(double value) {
  if (!std::isfinite(value)) {
    throw Error(ErrorCode::value, "a drawing holds a place that is not a finite number");
  }
  std::string text = fmt::format("{:.2f}", value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

/// ` fill="#1a1a1a"`, and how much it hides when that is not everything.
std::string colour_attribute(std::string_view name, Colour colour) {
  std::string out =
      fmt::format(" {}=\"#{:02x}{:02x}{:02x}\"", name, colour.red, colour.green, colour.blue);
  if (colour.opacity != 255) {
    out += fmt::format(" {}-opacity=\"{}\"", name, number(colour.opacity / 255.0));
  }
  return out;
}

std::string stroke_attributes(const Stroke& stroke) {
  std::string out = colour_attribute("stroke", stroke.colour) +
                    fmt::format(" stroke-width=\"{}\"", number(stroke.width_mm));
  if (stroke.dash_mm.empty()) return out;
  out += " stroke-dasharray=\"";
  for (std::size_t i = 0; i < stroke.dash_mm.size(); ++i) {
    out += (i == 0 ? "" : " ") + number(stroke.dash_mm[i]);
  }
  return out + "\"";
}

std::string paint_attributes(const std::optional<Colour>& fill,
                             const std::optional<Stroke>& outline) {
  return (fill ? colour_attribute("fill", *fill) : " fill=\"none\"") +
         (outline ? stroke_attributes(*outline) : "");
}

void append_line(std::string& out, const PaperLine& line) {
  for (std::size_t i = 0; i < line.size(); ++i) {
    out += (i == 0 ? "M" : "L") + number(line[i].x_mm) + " " + number(line[i].y_mm);
  }
}

class SvgText {
 public:
  explicit SvgText(std::string& out) : out_(out) {}

  void operator()(const Line& line) const {
    if (line.points.size() < 2) return;
    out_ += "<path d=\"";
    append_line(out_, line.points);
    out_ += "\"" + paint_attributes({}, line.stroke) + "/>\n";
  }

  void operator()(const Shape& shape) const {
    if (shape.fill) write_rings(shape, paint_attributes(shape.fill, {}));
    if (shape.hatch) {
      out_ += "<path d=\"";
      for (const PaperLine& line : hatch_lines(shape.rings, *shape.hatch)) append_line(out_, line);
      out_ += "\"" + paint_attributes({}, Stroke{shape.hatch->colour, shape.hatch->width_mm, {}}) +
              "/>\n";
    }
    if (shape.outline) write_rings(shape, paint_attributes({}, shape.outline));
  }

  void operator()(const Disc& disc) const {
    out_ += fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n", number(disc.centre.x_mm),
                        number(disc.centre.y_mm), number(disc.radius_mm),
                        paint_attributes(disc.fill, disc.outline));
  }

  void operator()(const Text& text) const {
    if (text.text.empty()) return;
    const std::string x = number(text.at.x_mm);
    out_ += fmt::format("<text x=\"{}\" y=\"{}\" font-size=\"{}\"", x,
                        number(text.at.y_mm + kHalfCapital * text.size_mm), number(text.size_mm));
    if (text.anchor == TextAnchor::middle) out_ += " text-anchor=\"middle\"";
    if (text.anchor == TextAnchor::end) out_ += " text-anchor=\"end\"";
    if (text.bold) out_ += " font-weight=\"bold\"";
    if (text.turned_deg != 0) {
      out_ += fmt::format(" transform=\"rotate({} {} {})\"", number(text.turned_deg), x,
                          number(text.at.y_mm));
    }
    if (text.halo_mm > 0) {
      out_ += fmt::format(
          " stroke=\"#ffffff\" stroke-width=\"{}\" stroke-linejoin=\"round\" "
          "paint-order=\"stroke\"",
          number(2 * text.halo_mm));
    }
    out_ += colour_attribute("fill", text.colour) + ">";
    append_xml_text(out_, text.text);
    out_ += "</text>\n";
  }

  void operator()(const Group& group) const {
    // A nested picture cuts at its edges and needs no id, as a clip path would.
    if (group.clip) {
      const PaperBox& box = *group.clip;
      const std::string size = fmt::format("{} {} {} {}", number(box.left_mm), number(box.top_mm),
                                           number(box.width_mm()), number(box.height_mm()));
      out_ += fmt::format(
          "<svg x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" viewBox=\"{}\" overflow=\"hidden\">\n",
          number(box.left_mm), number(box.top_mm), number(box.width_mm()), number(box.height_mm()),
          size);
    } else {
      out_ += "<g>\n";
    }
    for (const Element& element : group.elements) std::visit(*this, element.what);
    out_ += group.clip ? "</svg>\n" : "</g>\n";
  }

 private:
  void write_rings(const Shape& shape, const std::string& paint) const {
    out_ += "<path d=\"";
    for (const PaperLine& ring : shape.rings) {
      append_line(out_, ring);
      if (!ring.empty()) out_ += "Z";
    }
    out_ += "\" fill-rule=\"evenodd\"" + paint + "/>\n";
  }

  std::string& out_;
};

}  // namespace

std::string write_svg(const Drawing& drawing, SvgForm form) {
  const std::string width = number(drawing.size.width_mm);
  const std::string height = number(drawing.size.height_mm);
  std::string out;
  if (form == SvgForm::file) {
    out += "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    out +=
        fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}mm\" height=\"{1}mm\" ",
                    width, height);
  } else {
    out += "<svg ";
  }
  out +=
      fmt::format("viewBox=\"0 0 {} {}\" role=\"img\" font-family=\"{}\" stroke-linejoin=\"round\"",
                  width, height, kFonts);
  out += " aria-label=\"";
  append_xml_text(out, drawing.title);
  out += "\">\n";
  append_xml_element_if_any(out, "title", drawing.title);
  append_xml_element_if_any(out, "desc", drawing.description);
  out += "\n";
  // A picture file is looked at on grounds of any colour; its paper is white.
  if (form == SvgForm::file) {
    out += fmt::format("<rect width=\"{}\" height=\"{}\" fill=\"#ffffff\"/>\n", width, height);
  }
  for (const Element& element : drawing.elements) std::visit(SvgText(out), element.what);
  out += "</svg>\n";
  return out;
}

}  // namespace sweepwright::formats
