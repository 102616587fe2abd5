#include "formats/map_labels.hpp"

#include <algorithm>

#include "formats/utf8.hpp"

namespace sweepwright::formats {
namespace {

constexpr double kAir = 0.3;    // mm between labels
constexpr double kLater = 0.5;  // mm of covered line that each place is worse than the one before

}  // namespace

double LabelPlacer::overlap_mm2(const PaperBox& box) const {
  double total = 0;
  for (const PaperBox& other : taken_) {
    const PaperBox shared = intersection(box, other);
    if (shared.width_mm() > 0 && shared.height_mm() > 0) {
      total += shared.width_mm() * shared.height_mm();
    }
  }
  return total;
}

double LabelPlacer::line_length_mm(const PaperBox& box) const {
  double total = 0;
  for (const PaperLine& line : lines_) {
    for (const PaperLine& part : clipped(line, box)) {
      for (std::size_t i = 0; i + 1 < part.size(); ++i) total += length_mm(part[i + 1] - part[i]);
    }
  }
  return total;
}

std::optional<PaperPoint> LabelPlacer::best(PaperSize size, const std::vector<PaperPoint>& centres,
                                            bool may_overlap) const {
  std::optional<PaperPoint> best;
  double best_cost = 0;
  double later = -kLater;
  for (const PaperPoint& centre : centres) {
    later += kLater;
    const PaperBox box = box_round(centre, size);
    if (!contains(inside_, box)) continue;
    const double overlap = overlap_mm2(box);
    if (overlap > 0 && !may_overlap) continue;
    const double cost = 1000 * overlap + line_length_mm(box) + later;
    if (!best || cost < best_cost - 1e-9) {
      best = centre;
      best_cost = cost;
    }
    if (cost == later) break;
  }
  return best;
}

std::optional<PaperPoint> LabelPlacer::place_over_lines(PaperSize size,
                                                        const std::vector<PaperPoint>& centres) {
  for (const PaperPoint& centre : centres) {
    const PaperBox box = box_round(centre, size);
    if (!contains(inside_, box) || overlap_mm2(box) > 0) continue;
    keep_clear(box);
    return centre;
  }
  return std::nullopt;
}

std::optional<PaperPoint> LabelPlacer::place(PaperSize size,
                                             const std::vector<PaperPoint>& centres) {
  const auto at = best(size, centres, false);
  if (at) keep_clear(box_round(*at, size));
  return at;
}

PaperPoint LabelPlacer::place_anyway(PaperSize size, const std::vector<PaperPoint>& centres) {
  std::vector<PaperPoint> moved = centres;
  for (PaperPoint& centre : moved) {
    // A label wider than the map stays in its middle.
    const double x_room = std::max(0.0, (inside_.width_mm() - size.width_mm) / 2);
    const double y_room = std::max(0.0, (inside_.height_mm() - size.height_mm) / 2);
    const PaperPoint at = middle(inside_);
    centre = {std::clamp(centre.x_mm, at.x_mm - x_room, at.x_mm + x_room),
              std::clamp(centre.y_mm, at.y_mm - y_room, at.y_mm + y_room)};
  }
  const PaperPoint at = best(size, moved, true).value_or(moved.front());
  keep_clear(box_round(at, size));
  return at;
}

std::string fitted(std::string_view text, double size_mm, bool bold, double width_mm) {
  if (text_width_mm(text, size_mm, bold) <= width_mm) return std::string(text);
  std::string out;
  while (!text.empty()) {
    const std::size_t length = std::max<std::size_t>(character_length(text), 1);
    const std::string longer = out + std::string(text.substr(0, length));
    if (text_width_mm(longer + "...", size_mm, bold) > width_mm) break;
    out = longer;
    text.remove_prefix(length);
  }
  return out + "...";
}

PaperSize label_size(const Text& text) {
  const PaperBox box = bounds(text);
  return {box.width_mm() + 2 * kAir, box.height_mm() + 2 * kAir};
}

std::vector<PaperPoint> places_round(PaperPoint symbol, double radius_mm, PaperSize label) {
  std::vector<PaperPoint> places;
  for (const double away : {0.2, 2.0, 5.0, 9.0, 14.0, 20.0}) {
    const double x = radius_mm + away + label.width_mm / 2;
    const double y = radius_mm + away + label.height_mm / 2;
    for (const PaperPoint step :
         {PaperPoint{x, 0}, PaperPoint{-x, 0}, PaperPoint{0, -y}, PaperPoint{0, y},
          PaperPoint{x, -y}, PaperPoint{-x, -y}, PaperPoint{x, y}, PaperPoint{-x, y}}) {
      places.push_back(symbol + step);
    }
  }
  return places;
}

std::vector<PaperPoint> places_inside(const PaperArea& area, const PaperBox& box, PaperSize label,
                                      PaperPoint wanted) {
  constexpr int kSteps = 12;
  std::vector<PaperPoint> places;
  const auto whole = bounds(area);
  if (!whole) return places;
  const PaperBox seen = intersection(*whole, box);
  const double width = seen.width_mm() - label.width_mm;
  const double height = seen.height_mm() - label.height_mm;
  if (width < 0 || height < 0) return places;
  const PaperBox at_wanted = box_round(wanted, label);
  if (contains(box, at_wanted) && contains(area, at_wanted)) places.push_back(wanted);
  for (int row = 0; row <= kSteps; ++row) {
    for (int column = 0; column <= kSteps; ++column) {
      const PaperPoint at{seen.left_mm + label.width_mm / 2 + width * column / kSteps,
                          seen.top_mm + label.height_mm / 2 + height * row / kSteps};
      if (contains(area, box_round(at, label))) places.push_back(at);
    }
  }
  std::stable_sort(places.begin(), places.end(), [&](PaperPoint a, PaperPoint b) {
    return length_mm(a - wanted) < length_mm(b - wanted);
  });
  return places;
}

}  // namespace sweepwright::formats
