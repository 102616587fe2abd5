#include "formats/profile_axes.hpp"

#include <fmt/format.h>

#include <cmath>

namespace sweepwright::formats {
namespace {

constexpr Colour kFaint{205, 205, 205};
constexpr Colour kAxis{60, 60, 60};
constexpr double kFigureSize = 2.5;

Element text(PaperPoint at, std::string words, TextAnchor anchor) {
  Text text;
  text.at = at;
  text.text = std::move(words);
  text.size_mm = kFigureSize;
  text.anchor = anchor;
  text.colour = kAxis;
  return {text};
}

Element line(PaperPoint from, PaperPoint to, Colour colour, double width_mm) {
  return {Line{{from, to}, {colour, width_mm, {}}}};
}

std::string figure(double value) {
  return fmt::format("{:.0f}", value + 0.0);
}

}  // namespace

double nice_step(double range, int most) {
  double power = std::pow(10.0, std::floor(std::log10(range / most)));
  while (true) {
    for (const double factor : {1.0, 2.0, 5.0}) {
      if (range / (factor * power) <= most) return factor * power;
    }
    power *= 10;
  }
}

ProfileAxes::ProfileAxes(const PaperBox& frame, Length length, Length lowest, Length highest)
    : frame_(frame), length_(length) {
  constexpr int kHeightTicks = 8;
  constexpr int kDistanceTicks = 12;
  const double range = std::max(100.0, (highest - lowest).feet());
  const double tick = nice_step(range, kHeightTicks);
  height_tick_ = Length::feet(tick);
  bottom_ = Length::feet(std::floor(lowest.feet() / tick) * tick);
  top_ = Length::feet(std::ceil((lowest.feet() + range) / tick) * tick);
  distance_tick_ = Length::nautical_miles(nice_step(length.nautical_miles(), kDistanceTicks));
}

double ProfileAxes::x_mm(Length distance) const {
  return frame_.left_mm + frame_.width_mm() * (distance / length_);
}

double ProfileAxes::y_mm(Length height) const {
  return frame_.bottom_mm - frame_.height_mm() * ((height - bottom_) / (top_ - bottom_));
}

void ProfileAxes::draw(std::vector<Element>& elements) const {
  constexpr double kGap = 1.5;
  for (int i = 0; bottom_ + i * height_tick_ <= top_ + height_tick_ * 0.01; ++i) {
    const Length height = bottom_ + i * height_tick_;
    const double y = y_mm(height);
    elements.push_back(line({frame_.left_mm, y}, {frame_.right_mm, y}, kFaint, 0.15));
    elements.push_back(text({frame_.left_mm - kGap, y}, figure(height.feet()), TextAnchor::end));
    elements.push_back(
        text({frame_.right_mm + kGap, y}, figure(height.metres()), TextAnchor::start));
  }
  for (int i = 0; i * distance_tick_ <= length_ * 1.0001; ++i) {
    const double x = x_mm(i * distance_tick_);
    elements.push_back(line({x, frame_.bottom_mm}, {x, frame_.bottom_mm + 1}, kAxis, 0.2));
    elements.push_back(text({x, frame_.bottom_mm + 3},
                            fmt::format("{:.6g}", i * distance_tick_.nautical_miles()),
                            TextAnchor::middle));
  }
  elements.push_back(text({frame_.left_mm - kGap, frame_.top_mm - 4}, "ft", TextAnchor::end));
  elements.push_back(text({frame_.right_mm + kGap, frame_.top_mm - 4}, "m", TextAnchor::start));
  elements.push_back(
      text({frame_.right_mm + kGap + 4, frame_.bottom_mm + 3}, "NM", TextAnchor::start));
  Shape box;
  box.rings = {{{frame_.left_mm, frame_.top_mm},
                {frame_.right_mm, frame_.top_mm},
                {frame_.right_mm, frame_.bottom_mm},
                {frame_.left_mm, frame_.bottom_mm}}};
  box.outline = Stroke{kAxis, 0.25, {}};
  elements.push_back({box});
}

}  // namespace sweepwright::formats
