#include "formats/map_symbols.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "formats/map_labels.hpp"
#include "formats/map_style.hpp"
#include "sweepwright/base/quantity.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kLegendRow = 3.4;
constexpr double kSampleWidth = 6;
constexpr double kSampleGap = 1;
constexpr double kMostLegendText = 40;

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
  constexpr double kMost = 22;   // mm
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
    out.push_back({Text{{at.x_mm + x, text_y},
                        std::move(text),
                        style::kSmallText,
                        anchor,
                        false,
                        0,
                        style::kInk,
                        0}});
  };
  label(0, "0", TextAnchor::start);
  label(width, fmt::format("{:g} {}", length, unit), TextAnchor::middle);
  return out;
}

struct LegendColumns {
  std::size_t rows = 0;
  std::vector<double> widths_mm;
};

/// Columns as wide as their longest text, as many as fit into the width; one in any case.
LegendColumns legend_columns(const std::vector<LegendItem>& items, double width_mm) {
  constexpr double kBetween = 2;  // mm
  LegendColumns columns;
  for (std::size_t rows = 1; rows <= items.size(); ++rows) {
    columns = {rows, std::vector<double>((items.size() + rows - 1) / rows, 0)};
    double total = -kBetween;
    for (std::size_t i = 0; i < items.size(); ++i) {
      double& width = columns.widths_mm[i / rows];
      const double text =
          std::min(kMostLegendText, text_width_mm(items[i].text, style::kSmallText, false));
      const double wider = std::max(width, kSampleWidth + kSampleGap + text + kBetween);
      total += wider - width;
      width = wider;
    }
    if (total <= width_mm) break;
  }
  return columns;
}

}  // namespace

void append(Elements& to, Elements more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

Elements start_symbol(PaperPoint at, double first_track_deg) {
  PaperLine triangle;
  for (const PaperPoint corner :
       {PaperPoint{0, -1.6}, PaperPoint{0.9, 1.1}, PaperPoint{-0.9, 1.1}}) {
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

Elements scale_bars(PaperPoint at, double mm_per_metre) {
  constexpr double kStep = 4.5;  // mm from bar to bar
  PaperPoint bar = at + PaperPoint{1, 3};
  Elements out;
  for (const auto& [metres, unit] :
       {std::pair(kMetresPerNauticalMile, "NM"), std::pair(1000.0, "km"),
        std::pair(kMetresPerStatuteMile, "SM")}) {
    append(out, scale_bar(bar, mm_per_metre * metres, unit));
    bar.y_mm += kStep;
  }
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

double legend_height_mm(const std::vector<LegendItem>& items, double width_mm) {
  return kLegendRow * static_cast<double>(legend_columns(items, width_mm).rows);
}

Elements legend(const std::vector<LegendItem>& items, PaperBox box) {
  const LegendColumns columns = legend_columns(items, box.width_mm());
  Elements out;
  double left = box.left_mm;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::size_t row = i % columns.rows;
    const double width = columns.widths_mm[i / columns.rows];
    const PaperPoint at{left, box.top_mm + kLegendRow * static_cast<double>(row)};
    append(out, items[i].sample({at.x_mm, at.y_mm, at.x_mm + kSampleWidth, at.y_mm + kLegendRow}));
    const double room = std::min(width, box.right_mm - left) - kSampleWidth - kSampleGap;
    out.push_back({Text{at + PaperPoint{kSampleWidth + kSampleGap, kLegendRow / 2},
                        fitted(items[i].text, style::kSmallText, false, room), style::kSmallText,
                        TextAnchor::start, false, 0, style::kInk, 0}});
    if (row + 1 == columns.rows) left += width;
  }
  return out;
}

}  // namespace sweepwright::formats
