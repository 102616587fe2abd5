#include "formats/map_terrain.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>

#include "formats/map_style.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kStep = 1.0;  // mm: the side of a shaded square
constexpr std::array<std::uint8_t, 5> kShades{200, 213, 226, 238, 248};

Colour grey(std::uint8_t value) {
  return {value, value, value};
}

/// Heights at the corners of the squares, row by row from the top left.
struct Heights {
  int rows = 0;
  int columns = 0;
  std::vector<double> metres;  ///< NaN in a gap
  double at(int row, int column) const {
    return metres[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
                  static_cast<std::size_t>(column)];
  }
};

Heights sampled(const MapView& view, const terrain::ElevationModel& model) {
  const PaperBox& frame = view.frame();
  Heights heights{static_cast<int>(std::ceil(frame.height_mm() / kStep)) + 1,
                  static_cast<int>(std::ceil(frame.width_mm() / kStep)) + 1,
                  {}};
  for (int row = 0; row < heights.rows; ++row) {
    for (int column = 0; column < heights.columns; ++column) {
      const Position at =
          view.to_position({frame.left_mm + kStep * column, frame.top_mm + kStep * row});
      const auto height = terrain::height(model, at);
      heights.metres.push_back(height ? height->metres() : std::nan(""));
    }
  }
  return heights;
}

struct Slope {
  double right = 0;  ///< rise over run, to the right of the paper
  double down = 0;
};

Slope slope(const Heights& heights, int row, int column, double metres_per_step) {
  const double a = heights.at(row, column);
  const double b = heights.at(row, column + 1);
  const double c = heights.at(row + 1, column);
  const double d = heights.at(row + 1, column + 1);
  return {(b + d - a - c) / (2 * metres_per_step), (c + d - a - b) / (2 * metres_per_step)};
}

/// By how much slopes are stretched: the steepest tenth gets to 45 degrees or more.
double stretch(const std::vector<Slope>& slopes) {
  std::vector<double> steepness;
  for (const Slope& each : slopes) {
    const double value = std::hypot(each.right, each.down);
    if (std::isfinite(value)) steepness.push_back(value);
  }
  if (steepness.empty()) return 0;
  const auto tenth = steepness.begin() + static_cast<std::ptrdiff_t>(steepness.size() * 9 / 10);
  std::nth_element(steepness.begin(), tenth, steepness.end());
  // Flat ground stays flat: slopes under 1 in 50 are not made into hills.
  return 1 / std::max(*tenth, 0.02);
}

/// From 0, turned away from the light, to 1, facing it; flat ground has 0.71.
double light(const Slope& slope, double factor) {
  const double right = factor * slope.right;
  const double down = factor * slope.down;
  // The way to the light is (-1/2, -1/2, up); the slope's normal is (-right, -down, 1).
  const double up = std::sqrt(0.5);
  return std::max(0.0, (up + (right + down) / 2) / std::sqrt(1 + right * right + down * down));
}

/// The shade's place in kShades; none for white, and in a gap.
std::optional<std::size_t> shade(const Slope& slope, double factor) {
  if (!std::isfinite(slope.right) || !std::isfinite(slope.down)) return std::nullopt;
  constexpr double kFlat = 0.6;  // flat ground and all that faces the light stays white
  const double lit = light(slope, factor);
  if (lit >= kFlat) return std::nullopt;
  const auto place = static_cast<std::size_t>(lit / kFlat * kShades.size());
  return std::min(place, kShades.size() - 1);
}

PaperLine rectangle(double left, double top, double right, double bottom) {
  return {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
}

}  // namespace

Elements terrain_shading(const MapView& view, const terrain::ElevationModel& model) {
  const Heights heights = sampled(view, model);
  const int rows = heights.rows - 1;
  const int columns = heights.columns - 1;
  std::vector<Slope> slopes;
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      slopes.push_back(slope(heights, row, column, kStep / view.mm_per_metre()));
    }
  }
  const double factor = stretch(slopes);
  // Rows in turn go into two shapes of each shade, so that neighbours may overlap by a hair: no
  // white seams on screens.
  constexpr double kOverlap = 0.06;
  std::array<std::array<Shape, 2>, kShades.size()> shapes;
  for (int row = 0; row < rows; ++row) {
    const double top = view.frame().top_mm + kStep * row;
    std::optional<std::size_t> open;
    double from = 0;
    for (int column = 0; column <= columns; ++column) {
      std::optional<std::size_t> here;
      if (column < columns) {
        here = shade(slopes[static_cast<std::size_t>(row * columns + column)], factor);
      }
      if (here == open) continue;
      const double x = view.frame().left_mm + kStep * column;
      if (open) {
        shapes[*open][row % 2 == 0 ? 0 : 1].rings.push_back(
            rectangle(from, top, x + kOverlap, top + kStep + kOverlap));
      }
      open = here;
      from = x;
    }
  }
  Elements out;
  for (std::size_t i = 0; i < kShades.size(); ++i) {
    for (Shape& shape : shapes[kShades.size() - 1 - i]) {  // the lightest first
      if (shape.rings.empty()) continue;
      shape.fill = grey(kShades[kShades.size() - 1 - i]);
      out.push_back({std::move(shape)});
    }
  }
  return out;
}

LegendItem legend_terrain_shading() {
  return {"shaded slopes", [](PaperBox box) {
            Elements out;
            const double width = box.width_mm() / kShades.size();
            double left = box.left_mm;
            for (const std::uint8_t value : kShades) {
              out.push_back(
                  {Shape{{rectangle(left, box.top_mm + 0.6, left + width, box.bottom_mm - 0.6)},
                         {},
                         grey(value),
                         {}}});
              left += width;
            }
            return out;
          }};
}

}  // namespace sweepwright::formats
