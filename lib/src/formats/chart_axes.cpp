#include "formats/chart_axes.hpp"

#include <fmt/format.h>

#include <cmath>

namespace sweepwright::formats {
namespace {

constexpr double kNumberSize = 3;
constexpr double kTitleSize = 3.4;
const Stroke kGridLine{{205, 205, 205}, 0.15, {}};
const Stroke kFrame{kBlack, 0.3, {}};

std::vector<double> ticks(const Axis& axis) {
  std::vector<double> result;
  const int first = static_cast<int>(std::ceil(axis.least / axis.step - 1e-9));
  const int last = static_cast<int>(std::floor(axis.most / axis.step + 1e-9));
  for (int i = first; i <= last; ++i) result.push_back(i * axis.step);
  return result;
}

}  // namespace

PaperPoint Axes::at(double x, double y) const {
  return {box_.left_mm + (x - x_.least) / (x_.most - x_.least) * box_.width_mm(),
          box_.bottom_mm - (y - y_.least) / (y_.most - y_.least) * box_.height_mm()};
}

std::vector<Element> Axes::elements() const {
  std::vector<Element> all;
  for (const double x : ticks(x_)) {
    all.push_back({Line{{at(x, y_.least), at(x, y_.most)}, kGridLine}});
    const PaperPoint foot = at(x, y_.least);
    all.push_back(
        {Text{{foot.x_mm, foot.y_mm + 3.4}, fmt::format("{:.{}f}", x, x_.decimals), kNumberSize}});
  }
  for (const double y : ticks(y_)) {
    all.push_back({Line{{at(x_.least, y), at(x_.most, y)}, kGridLine}});
    const PaperPoint foot = at(x_.least, y);
    all.push_back({Text{{foot.x_mm - 1.5, foot.y_mm},
                        fmt::format("{:.{}f}", y, y_.decimals),
                        kNumberSize,
                        TextAnchor::end}});
  }
  all.push_back({Shape{{{{box_.left_mm, box_.top_mm},
                         {box_.right_mm, box_.top_mm},
                         {box_.right_mm, box_.bottom_mm},
                         {box_.left_mm, box_.bottom_mm}}},
                       kFrame,
                       std::nullopt,
                       std::nullopt}});
  all.push_back(
      {Text{{(box_.left_mm + box_.right_mm) / 2, box_.bottom_mm + 8.5}, x_.title, kTitleSize}});
  Text up{{box_.left_mm - 11, (box_.top_mm + box_.bottom_mm) / 2}, y_.title, kTitleSize};
  up.turned_deg = -90;
  all.push_back({up});
  return all;
}

double tick_step(double span) {
  const double power = std::pow(10, std::floor(std::log10(span)));
  for (const double step : {0.2, 0.5, 1.0}) {
    if (span / (step * power) <= 9) return step * power;
  }
  return 2 * power;
}

}  // namespace sweepwright::formats
