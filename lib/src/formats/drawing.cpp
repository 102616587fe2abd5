#include "sweepwright/formats/drawing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

#include "formats/map_geometry.hpp"
#include "formats/utf8.hpp"

namespace sweepwright::formats {
namespace {

// Widths of the printable ASCII characters in thousandths of the font's size, for a wide sans-serif
// font. Measured in DejaVu Sans Book, which is wider than other common sans-serif fonts.
constexpr std::array<std::uint16_t, 95> kAsciiWidths{
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361,  318, 337, 636, 636, 636,
    636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632,
    575, 775, 752, 295, 295, 656, 557, 863, 748, 787, 603, 787, 695, 635,  611, 732, 684, 989, 685,
    611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635, 615, 352,  635, 634, 278, 278, 579,
    278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592,  525, 636, 337, 636, 838};
constexpr double kOtherWidth = 0.75;
constexpr double kIdeographWidth = 1.0;
constexpr double kBoldFactor = 1.12;
constexpr double kTextHeight = 0.95;  // from the top of tall letters to the foot of low ones

std::optional<PaperBox> joined(std::optional<PaperBox> a, std::optional<PaperBox> b) {
  if (!a) return b;
  if (!b) return a;
  return PaperBox{std::min(a->left_mm, b->left_mm), std::min(a->top_mm, b->top_mm),
                  std::max(a->right_mm, b->right_mm), std::max(a->bottom_mm, b->bottom_mm)};
}

std::optional<PaperBox> bounds(const PaperLine& line) {
  if (line.empty()) return std::nullopt;
  PaperBox box{line[0].x_mm, line[0].y_mm, line[0].x_mm, line[0].y_mm};
  for (const PaperPoint& p : line) {
    box = *joined(box, PaperBox{p.x_mm, p.y_mm, p.x_mm, p.y_mm});
  }
  return box;
}

std::optional<PaperBox> grown(std::optional<PaperBox> box, const std::optional<Stroke>& stroke) {
  if (!box || !stroke) return box;
  return grown(*box, stroke->width_mm / 2);
}

struct BoundsOf {
  std::optional<PaperBox> operator()(const Line& line) const {
    return grown(bounds(line.points), line.stroke);
  }
  std::optional<PaperBox> operator()(const Shape& shape) const {
    std::optional<PaperBox> box;
    for (const PaperLine& ring : shape.rings) box = joined(box, bounds(ring));
    return grown(box, shape.outline);
  }
  std::optional<PaperBox> operator()(const Disc& disc) const {
    return grown(
        grown(PaperBox{disc.centre.x_mm, disc.centre.y_mm, disc.centre.x_mm, disc.centre.y_mm},
              disc.radius_mm),
        disc.outline);
  }
  std::optional<PaperBox> operator()(const Text& text) const { return formats::bounds(text); }
  std::optional<PaperBox> operator()(const Group& group) const {
    std::optional<PaperBox> box;
    for (const Element& element : group.elements) box = joined(box, formats::bounds(element));
    if (!box || !group.clip) return box;
    const PaperBox cut = intersection(*box, *group.clip);
    if (cut.width_mm() < 0 || cut.height_mm() < 0) return std::nullopt;
    return cut;
  }
};

}  // namespace

double text_width_mm(std::string_view text, double size_mm, bool bold) {
  double ems = 0;
  while (!text.empty()) {
    const auto byte = static_cast<unsigned char>(text.front());
    const std::size_t length = std::max<std::size_t>(character_length(text), 1);
    if (byte >= 0x20 && byte < 0x7F) {
      ems += kAsciiWidths[byte - 0x20U] / 1000.0;
    } else {
      ems += length >= 3 ? kIdeographWidth : kOtherWidth;
    }
    text.remove_prefix(length);
  }
  return ems * size_mm * (bold ? kBoldFactor : 1);
}

PaperBox bounds(const Text& text) {
  const double width = text_width_mm(text.text, text.size_mm, text.bold);
  const double left = text.anchor == TextAnchor::start    ? 0
                      : text.anchor == TextAnchor::middle ? -width / 2
                                                          : -width;
  const double half = text.size_mm * kTextHeight / 2;
  PaperLine corners;
  for (const PaperPoint corner : {PaperPoint{left, -half}, PaperPoint{left + width, -half},
                                  PaperPoint{left + width, half}, PaperPoint{left, half}}) {
    corners.push_back(text.at + turned(corner, text.turned_deg));
  }
  return *bounds(corners);
}

std::optional<PaperBox> bounds(const Element& element) {
  return std::visit(BoundsOf{}, element.what);
}

std::vector<PaperLine> hatch_lines(const std::vector<PaperLine>& rings, const Hatch& hatch) {
  // Turned so that the hatch lies level; its lines go through whole multiples of the gap, so that
  // the hatches of neighbouring shapes match.
  std::vector<PaperLine> level;
  double top = 0;
  double bottom = 0;
  bool first = true;
  const double turn = 90 - hatch.direction_deg;
  for (const PaperLine& ring : rings) {
    level.emplace_back();
    for (const PaperPoint& point : ring) {
      level.back().push_back(turned(point, turn));
      const double y = level.back().back().y_mm;
      top = first ? y : std::min(top, y);
      bottom = first ? y : std::max(bottom, y);
      first = false;
    }
  }
  std::vector<PaperLine> lines;
  if (first || !(hatch.gap_mm > 0)) return lines;
  for (double y = std::ceil(top / hatch.gap_mm) * hatch.gap_mm; y < bottom; y += hatch.gap_mm) {
    std::vector<double> crossings = crossings_at_height(level, y);
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
      lines.push_back({turned({crossings[i], y}, -turn), turned({crossings[i + 1], y}, -turn)});
    }
  }
  return lines;
}

}  // namespace sweepwright::formats
