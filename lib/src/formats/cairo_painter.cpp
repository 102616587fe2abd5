#include "formats/cairo_painter.hpp"

#include <fmt/format.h>

#include <numbers>

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

/// The size of the font that puts `Text::at` half way up the capitals: they are 0.72 of it high.
constexpr double kHalfCapital = 0.36;

void set_colour(cairo_t* context, Colour colour) {
  cairo_set_source_rgba(context, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0,
                        colour.opacity / 255.0);
}

/// What was painted between making and end of this object changed no setting of cairo.
class Saved {
 public:
  explicit Saved(cairo_t* context) : context_(context) { cairo_save(context_); }
  ~Saved() { cairo_restore(context_); }
  Saved(const Saved&) = delete;
  Saved& operator=(const Saved&) = delete;

 private:
  cairo_t* context_;
};

/// Paints elements; cairo's unit is the millimetre here.
class Painter {
 public:
  explicit Painter(cairo_t* context) : context_(context) {}

  void operator()(const Line& line) const {
    trace(line.points);
    stroke(line.stroke);
  }

  void operator()(const Shape& shape) const {
    if (shape.fill) {
      trace(shape.rings);
      fill(*shape.fill);
    }
    if (shape.hatch) {
      for (const PaperLine& line : hatch_lines(shape.rings, *shape.hatch)) trace(line);
      stroke({shape.hatch->colour, shape.hatch->width_mm, {}});
    }
    if (shape.outline) {
      trace(shape.rings);
      stroke(*shape.outline);
    }
  }

  void operator()(const Disc& disc) const {
    const auto circle = [&] {
      cairo_new_sub_path(context_);
      cairo_arc(context_, disc.centre.x_mm, disc.centre.y_mm, disc.radius_mm, 0,
                2 * std::numbers::pi);
      cairo_close_path(context_);
    };
    if (disc.fill) {
      circle();
      fill(*disc.fill);
    }
    if (disc.outline) {
      circle();
      stroke(*disc.outline);
    }
  }

  void operator()(const Text& text) const {
    if (text.text.empty()) return;
    const Saved saved(context_);
    cairo_translate(context_, text.at.x_mm, text.at.y_mm);
    cairo_rotate(context_, text.turned_deg * std::numbers::pi / 180);
    cairo_scale(context_, 1 / kPointsPerMillimetre, 1 / kPointsPerMillimetre);
    const double size = text.size_mm * kPointsPerMillimetre;
    const PangoLayoutPointer layout = make_layout(context_, size, text.bold);
    pango_layout_set_text(layout.get(), text.text.data(), static_cast<int>(text.text.size()));
    PangoLayoutLine* const line = pango_layout_get_line_readonly(layout.get(), 0);
    PangoRectangle box;
    pango_layout_line_get_extents(line, nullptr, &box);
    const double width = pango_units_to_double(box.width);
    const double left = text.anchor == TextAnchor::start    ? 0
                        : text.anchor == TextAnchor::middle ? -width / 2
                                                            : -width;
    const double baseline = kHalfCapital * size;
    if (text.halo_mm > 0) {
      cairo_move_to(context_, left, baseline);
      pango_cairo_layout_line_path(context_, line);
      cairo_set_line_join(context_, CAIRO_LINE_JOIN_ROUND);
      stroke({kWhite, 2 * text.halo_mm * kPointsPerMillimetre, {}});
    }
    cairo_move_to(context_, left, baseline);
    set_colour(context_, text.colour);
    pango_cairo_show_layout_line(context_, line);
    cairo_new_path(context_);
  }

  void operator()(const Group& group) const {
    const Saved saved(context_);
    if (group.clip) {
      cairo_rectangle(context_, group.clip->left_mm, group.clip->top_mm, group.clip->width_mm(),
                      group.clip->height_mm());
      cairo_clip(context_);
    }
    for (const Element& element : group.elements) std::visit(*this, element.what);
  }

 private:
  void trace(const PaperLine& line) const {
    cairo_new_sub_path(context_);
    for (const PaperPoint& point : line) cairo_line_to(context_, point.x_mm, point.y_mm);
  }

  void trace(const std::vector<PaperLine>& rings) const {
    for (const PaperLine& ring : rings) {
      trace(ring);
      cairo_close_path(context_);
    }
  }

  void stroke(const Stroke& stroke) const {
    set_colour(context_, stroke.colour);
    cairo_set_line_width(context_, stroke.width_mm);
    cairo_set_dash(context_, stroke.dash_mm.data(), static_cast<int>(stroke.dash_mm.size()), 0);
    cairo_stroke(context_);
  }

  void fill(Colour colour) const {
    set_colour(context_, colour);
    cairo_set_fill_rule(context_, CAIRO_FILL_RULE_EVEN_ODD);
    cairo_fill(context_);
  }

  cairo_t* context_;
};

}  // namespace

PangoLayoutPointer make_layout(cairo_t* context, double size_points, bool bold) {
  PangoLayoutPointer layout(pango_cairo_create_layout(context));
  PangoContext* const fonts = pango_layout_get_context(layout.get());
  cairo_font_options_t* const options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(fonts, options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(fonts, FALSE);
  PangoFontDescription* const font = pango_font_description_from_string(kSheetFonts);
  pango_font_description_set_weight(font, bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size(font, size_points * PANGO_SCALE);
  pango_layout_set_font_description(layout.get(), font);
  pango_font_description_free(font);
  pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
  return layout;
}

void check(cairo_status_t status) {
  if (status == CAIRO_STATUS_SUCCESS) return;
  throw Error(ErrorCode::unwritable,
              fmt::format("a page cannot be drawn: {}", cairo_status_to_string(status)));
}

void paint(cairo_t* context, const Drawing& drawing) {
  {
    const Saved saved(context);
    cairo_scale(context, kPointsPerMillimetre, kPointsPerMillimetre);
    for (const Element& element : drawing.elements) std::visit(Painter(context), element.what);
  }
  check(cairo_status(context));
}

}  // namespace sweepwright::formats
