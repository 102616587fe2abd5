#include "formats/map_north.hpp"

#include <fmt/format.h>

#include <cmath>

#include "formats/map_style.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kArrow = 7;      // mm
constexpr double kColumn = 10.5;  // mm: an arrow with its name
constexpr double kTextRow = 2.8;  // mm
constexpr double kPlate = 0.15;   // mm of its rim

Element words(PaperPoint at, std::string text, bool bold) {
  return {
      Text{at, std::move(text), style::kSmallText, TextAnchor::middle, bold, 0, style::kInk, 0}};
}

Element filled(PaperLine ring, Colour fill) {
  return {Shape{{std::move(ring)}, Stroke{style::kInk, 0.25, {}}, fill, {}}};
}

/// Half black and half white, about its middle.
Elements true_north(PaperPoint middle) {
  const double half = kArrow / 2;
  const auto side = [&](double x) {
    return PaperLine{middle + PaperPoint{0, -half}, middle + PaperPoint{x, half},
                     middle + PaperPoint{0, 0.6 * half}};
  };
  return {filled(side(1.7), style::kInk), filled(side(-1.7), kWhite)};
}

/// A line with half a head, turned about its middle.
Elements magnetic_north(PaperPoint middle, Angle variation) {
  const double half = kArrow / 2;
  const auto at = [&](double x, double y) { return middle + turned({x, y}, variation.degrees()); };
  const double head = variation < Angle() ? -1.3 : 1.3;
  return {{Line{{at(0, half), at(0, -half)}, Stroke{style::kInk, 0.35, {}}}},
          filled({at(0, -half), at(head, -half + 2.8), at(0, -half + 2.8)}, style::kInk)};
}

}  // namespace

NorthArrows::NorthArrows(const std::optional<magnetic::Variation>& variation) {
  if (!variation) return;
  variation_ = variation->angle;
  const std::string text = magnetic::format_variation(*variation);
  note_ = "VAR " + text.substr(0, text.find(" ("));
  if (!variation->warnings.empty()) note_ += ", see notes";
}

PaperSize NorthArrows::size() const {
  const double rows = variation_ ? 2 : 1;
  const double width = variation_ ? 2 * kColumn : kColumn;
  const double note = text_width_mm(note_, style::kSmallText, false) + 1;
  return {std::max(width, note), kArrow + 1.6 + rows * kTextRow};
}

void NorthArrows::place(const PaperBox& frame, LabelPlacer& placer) {
  constexpr double kAir = 0.8;  // mm to the frame
  const double x = size().width_mm / 2 + kAir;
  const double y = size().height_mm / 2 + kAir;
  centre_ = placer.place_anyway(size(), {{frame.right_mm - x, frame.top_mm + y},
                                         {frame.left_mm + x, frame.top_mm + y},
                                         {frame.right_mm - x, frame.bottom_mm - y},
                                         {frame.left_mm + x, frame.bottom_mm - y}});
}

Elements NorthArrows::elements() const {
  const PaperBox plate = box_round(centre_, size());
  Elements out{{Shape{{{{plate.left_mm, plate.top_mm},
                        {plate.right_mm, plate.top_mm},
                        {plate.right_mm, plate.bottom_mm},
                        {plate.left_mm, plate.bottom_mm}}},
                      Stroke{style::kFaint, kPlate, {}},
                      kWhite,
                      {}}}};
  const double arrow_y = plate.top_mm + 0.9 + kArrow / 2;
  const double name_y = plate.top_mm + kArrow + 1.2 + kTextRow / 2;
  const double shift = variation_ ? kColumn / 2 : 0;
  const PaperPoint left{centre_.x_mm - shift, arrow_y};
  append(out, true_north(left));
  out.push_back(words({left.x_mm, name_y}, "TRUE N", true));
  if (!variation_) return out;
  const PaperPoint right{centre_.x_mm + shift, arrow_y};
  append(out, magnetic_north(right, *variation_));
  out.push_back(words({right.x_mm, name_y}, "MAG N", true));
  out.push_back(words({centre_.x_mm, name_y + kTextRow}, note_, false));
  return out;
}

}  // namespace sweepwright::formats
