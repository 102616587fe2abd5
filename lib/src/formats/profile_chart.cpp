#include "sweepwright/formats/profile_chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "formats/profile_axes.hpp"
#include "sweepwright/base/quantity_text.hpp"
#include "sweepwright/formats/cautions.hpp"

namespace sweepwright::formats {
namespace {

using terrain::ClearanceClass;
using terrain::CorridorPiece;

constexpr Colour kGround{96, 84, 70};
constexpr Colour kCorridorGround{204, 192, 172};
constexpr Colour kPlanned{0, 60, 140};
constexpr Colour kAlarm{170, 0, 0};
constexpr Colour kQuiet{70, 70, 70};
constexpr double kStripHeight = 7;
constexpr double kTextSize = 2.6;

std::string feet(Length height) {
  return format_length(height, LengthUnit::foot, 0);
}

Text words(PaperPoint at, std::string text, TextAnchor anchor) {
  Text label;
  label.at = at;
  label.text = std::move(text);
  label.size_mm = kTextSize;
  label.anchor = anchor;
  return label;
}

PaperLine rectangle(double left, double top, double right, double bottom) {
  return {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
}

/// What a class looks like: a pattern that differs in print, and a colour besides.
Shape patterned(ClearanceClass clearance, PaperLine ring) {
  Shape shape;
  shape.rings = {std::move(ring)};
  shape.outline = Stroke{kQuiet, 0.2, {}};
  switch (clearance) {
    case ClearanceClass::below_minimum:
      shape.fill = kAlarm;
      break;
    case ClearanceClass::not_checked:
      shape.hatch = Hatch{kBlack, 0.25, 1.2, 135};
      break;
    case ClearanceClass::marginal:
      shape.hatch = Hatch{Colour{150, 90, 0}, 0.25, 1.6, 45};
      break;
    case ClearanceClass::clear:
      break;
  }
  return shape;
}

std::string label_of(ClearanceClass clearance) {
  return clearance == ClearanceClass::below_minimum ? "BELOW MINIMUM"
         : clearance == ClearanceClass::not_checked ? "NOT CHECKED"
                                                    : std::string(terrain::name(clearance));
}

class ProfileChart {
 public:
  ProfileChart(const TerrainReport& report, PaperSize size)
      : report_(report),
        size_(size),
        axes_({17, 16, size.width_mm - 17, size.height_mm - 27}, terrain::length(report.corridor),
              lowest(), highest()) {}

  Drawing draw() {
    drawing_.size = size_;
    drawing_.title = "Terrain profile";
    drawing_.description = description();
    heading();
    axes_.draw(drawing_.elements);
    Group inside;
    inside.clip = axes_.frame();
    unknown_ground(inside.elements);
    ground(inside.elements, &CorridorPiece::highest, kCorridorGround);
    ground(inside.elements, &CorridorPiece::below, kGround);
    leg_marks(inside.elements);
    planned(inside.elements);
    drawing_.elements.push_back({inside});
    least();
    strip();
    legend();
    return std::move(drawing_);
  }

 private:
  const std::vector<CorridorPiece>& pieces() const { return report_.corridor.pieces; }

  Length lowest() const {
    std::optional<Length> low;
    const auto take = [&](Length height) { low = low ? std::min(*low, height) : height; };
    for (const CorridorPiece& piece : pieces()) {
      if (piece.below) take(piece.below->height);
    }
    for (const terrain::HeightStep& step : report_.heights) {
      if (step.altitude) take(*step.altitude);
    }
    return low.value_or(Length());
  }

  /// Room above the planned height for its label.
  Length highest() const {
    Length high = lowest() + Length::feet(100);
    if (const auto top = terrain::highest(report_.corridor)) high = std::max(high, top->height);
    for (const terrain::HeightStep& step : report_.heights) {
      if (step.altitude) high = std::max(high, *step.altitude);
    }
    return high + (high - lowest()) * 0.12;
  }

  std::string description() const {
    std::string text = fmt::format("Verdict {}. ", label_of(verdict(report_)));
    if (const auto top = terrain::highest(report_.corridor)) {
      text += fmt::format("Highest ground {}. ", feet(top->height));
    }
    if (report_.clearance.least) {
      text += fmt::format("Least clearance {}. ", feet(report_.clearance.least->clearance));
    }
    return text + std::string(kTerrainCaution);
  }

  void heading() {
    Text title = words({axes_.frame().left_mm, 4.5}, "Terrain: " + label_of(verdict(report_)),
                       TextAnchor::start);
    title.size_mm = 4;
    title.bold = true;
    drawing_.elements.push_back({title});
    drawing_.elements.push_back({words(
        {axes_.frame().left_mm, 9.5},
        fmt::format("Minimum clearance {}, corridor {} to each side. Heights above mean sea level.",
                    feet(report_.question.minimum),
                    format_length(report_.corridor.half_width, LengthUnit::nautical_mile, 2)),
        TextAnchor::start)});
  }

  /// Neighbouring pieces with a height, as steps down to the bottom of the chart.
  void ground(std::vector<Element>& elements,
              std::optional<terrain::HighGround> CorridorPiece::*member, Colour fill) const {
    Shape shape;
    shape.fill = fill;
    PaperLine ring;
    const double bottom = axes_.frame().bottom_mm;
    const auto close = [&] {
      if (ring.empty()) return;
      ring.push_back({ring.back().x_mm, bottom});
      ring.insert(ring.begin(), {ring.front().x_mm, bottom});
      shape.rings.push_back(std::move(ring));
      ring.clear();
    };
    for (const CorridorPiece& piece : pieces()) {
      const auto& here = piece.*member;
      if (!here) {
        close();
        continue;
      }
      ring.push_back({axes_.x_mm(piece.from), axes_.y_mm(here->height)});
      ring.push_back({axes_.x_mm(piece.to), axes_.y_mm(here->height)});
    }
    close();
    if (!shape.rings.empty()) elements.push_back({shape});
  }

  void unknown_ground(std::vector<Element>& elements) const {
    for (std::size_t i = 0; i < pieces().size();) {
      std::size_t end = i + 1;
      while (end < pieces().size() && pieces()[end].known == pieces()[i].known) ++end;
      if (!pieces()[i].known) {
        Shape gap;
        gap.rings = {rectangle(axes_.x_mm(pieces()[i].from), axes_.frame().top_mm,
                               axes_.x_mm(pieces()[end - 1].to), axes_.frame().bottom_mm)};
        gap.hatch = Hatch{Colour{120, 120, 120}, 0.15, 2, 135};
        elements.push_back({gap});
      }
      i = end;
    }
  }

  /// Empty for a leg that the chart does not mark.
  std::string leg_name(int leg) const {
    if (report_.leg_names.empty()) return fmt::format("leg {}", leg + 1);
    return report_.leg_names.at(static_cast<std::size_t>(leg));
  }

  void leg_marks(std::vector<Element>& elements) const {
    const double y = axes_.frame().top_mm;
    double free_from = 0;
    for (std::size_t i = 0; i < pieces().size(); ++i) {
      if (i > 0 && pieces()[i].leg == pieces()[i - 1].leg) continue;
      const std::string name = leg_name(pieces()[i].leg);
      if (name.empty()) continue;
      const double x = axes_.x_mm(pieces()[i].from);
      if (i > 0) {
        elements.push_back({Line{{{x, y}, {x, axes_.frame().bottom_mm}}, {kQuiet, 0.2, {1, 1}}}});
      }
      if (x < free_from) continue;
      Text label = words({x + 1, y + 2.6}, name, TextAnchor::start);
      label.halo_mm = 0.4;
      free_from = x + text_width_mm(label.text, label.size_mm, false) + 1;
      elements.push_back({label});
    }
  }

  void planned(std::vector<Element>& elements) const {
    Line line{{}, {kPlanned, 0.7, {}}};
    Length from;
    bool labelled = false;
    const auto flush = [&] {
      if (!line.points.empty()) elements.push_back({line});
      line.points.clear();
    };
    for (const terrain::HeightStep& step : report_.heights) {
      if (step.altitude) {
        const double y = axes_.y_mm(*step.altitude);
        line.points.push_back({axes_.x_mm(from), y});
        line.points.push_back({axes_.x_mm(step.to), y});
        if (!labelled) {
          Text label = words({axes_.x_mm(from) + 2, y - 2.5},
                             fmt::format("planned {}", feet(*step.altitude)), TextAnchor::start);
          label.colour = kPlanned;
          label.bold = true;
          label.halo_mm = 0.5;
          elements.push_back({label});
          labelled = true;
        }
      } else {
        flush();
      }
      from = step.to;
    }
    flush();
  }

  /// A measure between the ground and the planned height where the least air is left.
  void least() {
    if (!report_.clearance.least) return;
    const terrain::LeastClearance& least = *report_.clearance.least;
    const CorridorPiece& piece = pieces()[least.piece];
    const double x = (axes_.x_mm(piece.from) + axes_.x_mm(piece.to)) / 2;
    const double ground = axes_.y_mm(least.ground.height);
    const double height = axes_.y_mm(least.altitude);
    drawing_.elements.push_back({Line{{{x, ground}, {x, height}}, {kBlack, 0.35, {}}}});
    for (const double end : {ground, height}) {
      drawing_.elements.push_back({Line{{{x - 1.2, end}, {x + 1.2, end}}, {kBlack, 0.35, {}}}});
    }
    const bool right = x < axes_.frame().left_mm + axes_.frame().width_mm() * 0.6;
    // Beside the measure where it is long enough, else above it.
    const bool beside = std::abs(ground - height) > 10;
    const double y = beside ? (ground + height) / 2 - 1.7
                            : std::max(axes_.frame().top_mm + 6, std::min(ground, height) - 5.5);
    Text label =
        words({right ? x + 2 : x - 2, y}, fmt::format("least clearance {}", feet(least.clearance)),
              right ? TextAnchor::start : TextAnchor::end);
    label.bold = true;
    label.halo_mm = 0.6;
    drawing_.elements.push_back({label});
    Text below = label;
    below.at.y_mm += 3.4;
    below.text = fmt::format("over ground of {}", feet(least.ground.height));
    below.bold = false;
    drawing_.elements.push_back({below});
  }

  void strip() {
    const double top = axes_.frame().bottom_mm + 6;
    for (const terrain::ClearanceRun& run : report_.clearance.runs) {
      const double left = axes_.x_mm(pieces()[run.first].from);
      const double right = axes_.x_mm(pieces()[run.last].to);
      drawing_.elements.push_back(
          {patterned(run.clearance, rectangle(left, top, right, top + kStripHeight))});
      Text label = words({(left + right) / 2, top + kStripHeight / 2}, label_of(run.clearance),
                         TextAnchor::middle);
      const bool on_dark = run.clearance == ClearanceClass::below_minimum;
      label.colour = on_dark ? kWhite : kBlack;
      label.halo_mm = on_dark ? 0 : 0.7;
      label.bold = run.clearance != ClearanceClass::clear;
      if (text_width_mm(label.text, label.size_mm, label.bold) < right - left - 1) {
        drawing_.elements.push_back({label});
      }
    }
  }

  /// The four classes, for stretches that are too short for a label.
  void legend() {
    const double top = axes_.frame().bottom_mm + 6 + kStripHeight + 2;
    double x = axes_.frame().left_mm;
    for (const ClearanceClass clearance :
         {ClearanceClass::below_minimum, ClearanceClass::not_checked, ClearanceClass::marginal,
          ClearanceClass::clear}) {
      drawing_.elements.push_back({patterned(clearance, rectangle(x, top, x + 7, top + 3.5))});
      const std::string label = label_of(clearance);
      drawing_.elements.push_back({words({x + 8.5, top + 1.75}, label, TextAnchor::start)});
      x += 12 + text_width_mm(label, kTextSize, false);
    }
    double y = top + 6.2;
    for (const std::string& line :
         {std::string(kTerrainCaution), fmt::format("{} {}", kCautions[0], kCautions[2])}) {
      Text caution = words({axes_.frame().left_mm, y}, line, TextAnchor::start);
      caution.size_mm = 2.4;
      drawing_.elements.push_back({caution});
      y += 3.2;
    }
  }

  const TerrainReport& report_;
  PaperSize size_;
  ProfileAxes axes_;
  Drawing drawing_;
};

}  // namespace

Drawing draw_profile(const TerrainReport& report, PaperSize size) {
  return ProfileChart(report, size).draw();
}

}  // namespace sweepwright::formats
