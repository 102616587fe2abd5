#include "formats/map_symbols.hpp"

#include <fmt/format.h>

#include <array>
#include <iterator>

#include "formats/map_labels.hpp"
#include "formats/map_style.hpp"
#include "sweepwright/base/quantity.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kLegendRow = 3.4;
constexpr double kSampleWidth = 6;
constexpr double kSampleGap = 1;

const Stroke kRim{kWhite, 0.5, {}};

Element shape(PaperLine ring, std::optional<Stroke> outline, std::optional<Colour> fill) {
  return {Shape{{std::move(ring)}, std::move(outline), fill, {}}};
}

PaperLine moved(PaperPoint by, PaperLine line) {
  for (PaperPoint& point : line) point = point + by;
  return line;
}

/// The longest of the usual bar lengths that is no longer than `most`.
double bar_length(double most) {
  double best = 0;
  for (double decade = 1e-3; decade < 1e4; decade *= 10) {
    for (const double step : {1.0, 2.0, 5.0}) {
      if (step * decade <= most) best = step * decade;
    }
  }
  return best;
}

Elements scale_bar(PaperPoint at, double mm_per_unit, std::string_view unit) {
  constexpr double kMost = 25;   // mm
  constexpr double kHeight = 1;  // mm
  const double length = bar_length(kMost / mm_per_unit);
  const double width = length * mm_per_unit;
  const Stroke rim{style::kInk, 0.2, {}};
  const PaperLine left{{0, 0}, {width / 2, 0}, {width / 2, kHeight}, {0, kHeight}};
  Elements out;
  out.push_back(shape(moved(at, left), rim, style::kInk));
  out.push_back(shape(moved(at + PaperPoint{width / 2, 0}, left), rim, kWhite));
  const double text_y = at.y_mm - 1.5;
  const auto label = [&](double x, std::string text, TextAnchor anchor) {
    out.push_back({Text{{at.x_mm + x, text_y}, std::move(text), style::kSmallText, anchor, false, 0,
                        style::kInk, 0}});
  };
  label(0, "0", TextAnchor::start);
  label(width, fmt::format("{:g} {}", length, unit), TextAnchor::middle);
  return out;
}

}  // namespace

void append(Elements& to, Elements more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

Elements start_symbol(PaperPoint at, double first_track_deg) {
  PaperLine triangle;
  for (const PaperPoint corner :
       {PaperPoint{0, -1.4}, PaperPoint{1.2, 0.9}, PaperPoint{-1.2, 0.9}}) {
    triangle.push_back(at + turned(corner, first_track_deg));
  }
  return {{Disc{at, kStartRadius, Stroke{style::kInk, 0.5, {}}, kWhite}},
          shape(triangle, {}, style::kInk)};
}

Elements end_symbol(PaperPoint at) {
  constexpr double kHalf = 1.1;
  return {shape(moved(at, {{-kHalf, -kHalf}, {kHalf, -kHalf}, {kHalf, kHalf}, {-kHalf, kHalf}}),
                kRim, style::kInk)};
}

Elements base_symbol(PaperPoint at) {
  return {shape(moved(at, {{0, -2}, {1.9, -0.4}, {1.9, 1.6}, {-1.9, 1.6}, {-1.9, -0.4}}), kRim,
                style::kInk),
          shape(moved(at, {{-0.5, 1.6}, {-0.5, 0.2}, {0.5, 0.2}, {0.5, 1.6}}), {}, kWhite)};
}

Elements datum_symbol(PaperPoint at) {
  const Stroke pen{style::kInk, 0.45, {}};
  return {{Disc{at, 1.4, pen, kWhite}},
          {Line{{at + PaperPoint{-kDatumRadius, 0}, at + PaperPoint{kDatumRadius, 0}}, pen}},
          {Line{{at + PaperPoint{0, -kDatumRadius}, at + PaperPoint{0, kDatumRadius}}, pen}}};
}

Element arrowhead(PaperPoint tip, double direction_deg, double size_mm, Colour colour) {
  PaperLine ring;
  for (const PaperPoint corner :
       {PaperPoint{0, 0}, PaperPoint{0.42, 1}, PaperPoint{0, 0.75}, PaperPoint{-0.42, 1}}) {
    ring.push_back(tip + turned(size_mm * corner, direction_deg));
  }
  return shape(ring, {}, colour);
}

Elements arrow(PaperPoint from, PaperPoint to, Colour colour) {
  constexpr double kHead = 2.8;
  const double direction = direction_deg(from, to);
  // The line stops inside the head: its square end would stick out at the tip.
  return {{Line{{from, to - kHead / 2 * unit_vector(direction)}, Stroke{colour, 0.5, {}}}},
          arrowhead(to, direction, kHead, colour)};
}

Elements north_arrow(PaperPoint top_middle) {
  const PaperPoint tip = top_middle + PaperPoint{0, 0.4};
  return {shape(moved(tip, {{0, 0}, {1.7, 6}, {0, 4.8}}), Stroke{style::kInk, 0.25, {}},
                style::kInk),
          shape(moved(tip, {{0, 0}, {-1.7, 6}, {0, 4.8}}), Stroke{style::kInk, 0.25, {}}, kWhite),
          {Text{tip + PaperPoint{0, 8.2}, "TRUE N", style::kSmallText, TextAnchor::middle, true, 0,
                style::kInk, style::kHalo}}};
}

Elements scale_bars(PaperPoint at, double mm_per_metre) {
  Elements out = scale_bar(at + PaperPoint{1, 3.2}, mm_per_metre * kMetresPerNauticalMile, "NM");
  append(out, scale_bar(at + PaperPoint{1, 8}, mm_per_metre * 1000, "km"));
  return out;
}

Elements scaled(Elements elements, PaperPoint about, double factor) {
  const auto move = [&](PaperPoint& point) { point = about + factor * (point - about); };
  for (Element& element : elements) {
    if (Line* line = std::get_if<Line>(&element.what)) {
      for (PaperPoint& point : line->points) move(point);
    } else if (Shape* shape = std::get_if<Shape>(&element.what)) {
      for (PaperLine& ring : shape->rings) {
        for (PaperPoint& point : ring) move(point);
      }
    } else if (Disc* disc = std::get_if<Disc>(&element.what)) {
      move(disc->centre);
      disc->radius_mm *= factor;
    }
  }
  return elements;
}

double legend_height_mm(std::size_t items, int columns) {
  const auto across = static_cast<std::size_t>(columns);
  return kLegendRow * static_cast<double>((items + across - 1) / across);
}

Elements legend(const std::vector<LegendItem>& items, PaperBox box, int columns) {
  const auto across = static_cast<std::size_t>(columns);
  const std::size_t rows = (items.size() + across - 1) / across;
  const double column_width = box.width_mm() / columns;
  Elements out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const PaperPoint at{box.left_mm + column_width * static_cast<double>(i / rows),
                        box.top_mm + kLegendRow * static_cast<double>(i % rows)};
    append(out, items[i].sample({at.x_mm, at.y_mm, at.x_mm + kSampleWidth, at.y_mm + kLegendRow}));
    const std::string text = fitted(items[i].text, style::kSmallText, false,
                                    column_width - kSampleWidth - kSampleGap);
    out.push_back({Text{at + PaperPoint{kSampleWidth + kSampleGap, kLegendRow / 2}, text,
                        style::kSmallText, TextAnchor::start, false, 0, style::kInk, 0}});
  }
  return out;
}

}  // namespace sweepwright::formats
