#include "formats/map_geometry.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sweepwright/base/constants.hpp"

namespace sweepwright::formats {
namespace {

/// Visits each edge of each ring.
template <typename Visit>
void for_each_edge(const PaperArea& area, Visit visit) {
  for (const PaperLine& ring : area) {
    for (std::size_t i = 0; i < ring.size(); ++i) visit(ring[i], ring[(i + 1) % ring.size()]);
  }
}

double distance_to_segment_mm(PaperPoint point, PaperPoint a, PaperPoint b) {
  const PaperPoint along = b - a;
  const double squared = along.x_mm * along.x_mm + along.y_mm * along.y_mm;
  if (squared == 0) return length_mm(point - a);
  const PaperPoint to_point = point - a;
  const double share = (to_point.x_mm * along.x_mm + to_point.y_mm * along.y_mm) / squared;
  return length_mm(to_point - std::clamp(share, 0.0, 1.0) * along);
}

}  // namespace

double length_mm(PaperPoint vector) {
  return std::hypot(vector.x_mm, vector.y_mm);
}

PaperPoint turned(PaperPoint point, double clockwise_deg) {
  const double angle = clockwise_deg / kDegreesPerRadian;
  const double sine = std::sin(angle);
  const double cosine = std::cos(angle);
  return {point.x_mm * cosine - point.y_mm * sine, point.x_mm * sine + point.y_mm * cosine};
}

PaperPoint unit_vector(double direction_deg) {
  return turned({0, -1}, direction_deg);
}

double direction_deg(PaperPoint from, PaperPoint to) {
  const PaperPoint step = to - from;
  return std::atan2(step.x_mm, -step.y_mm) * kDegreesPerRadian;
}

PaperBox box_round(PaperPoint centre, PaperSize size) {
  return {centre.x_mm - size.width_mm / 2, centre.y_mm - size.height_mm / 2,
          centre.x_mm + size.width_mm / 2, centre.y_mm + size.height_mm / 2};
}

PaperBox grown(PaperBox box, double by_mm) {
  return {box.left_mm - by_mm, box.top_mm - by_mm, box.right_mm + by_mm, box.bottom_mm + by_mm};
}

PaperBox intersection(const PaperBox& a, const PaperBox& b) {
  return {std::max(a.left_mm, b.left_mm), std::max(a.top_mm, b.top_mm),
          std::min(a.right_mm, b.right_mm), std::min(a.bottom_mm, b.bottom_mm)};
}

bool contains(const PaperBox& box, PaperPoint point) {
  return box.left_mm <= point.x_mm && point.x_mm <= box.right_mm && box.top_mm <= point.y_mm &&
         point.y_mm <= box.bottom_mm;
}

bool contains(const PaperBox& outer, const PaperBox& inner) {
  return contains(outer, PaperPoint{inner.left_mm, inner.top_mm}) &&
         contains(outer, PaperPoint{inner.right_mm, inner.bottom_mm});
}

PaperPoint middle(const PaperBox& box) {
  return {(box.left_mm + box.right_mm) / 2, (box.top_mm + box.bottom_mm) / 2};
}

std::optional<PaperSegment> clipped(const PaperSegment& segment, const PaperBox& box) {
  // Liang and Barsky (1984): the stretch of the line between its crossings of the four edges.
  double enter = 0;
  double leave = 1;
  const PaperPoint step = segment.to - segment.from;
  const auto cut = [&](double towards, double room) {
    if (towards == 0) return room >= 0;
    const double at = room / towards;
    if (towards < 0) {
      enter = std::max(enter, at);
    } else {
      leave = std::min(leave, at);
    }
    return true;
  };
  const bool may_meet = cut(-step.x_mm, segment.from.x_mm - box.left_mm) &&
                        cut(step.x_mm, box.right_mm - segment.from.x_mm) &&
                        cut(-step.y_mm, segment.from.y_mm - box.top_mm) &&
                        cut(step.y_mm, box.bottom_mm - segment.from.y_mm);
  if (!may_meet || enter > leave) return std::nullopt;
  return PaperSegment{segment.from + enter * step, segment.from + leave * step};
}

std::vector<PaperLine> clipped(const PaperLine& line, const PaperBox& box) {
  std::vector<PaperLine> parts;
  bool joined = false;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const auto part = clipped(PaperSegment{line[i], line[i + 1]}, box);
    if (!part) {
      joined = false;
      continue;
    }
    if (!joined) parts.push_back({part->from});
    parts.back().push_back(part->to);
    joined = part->to == line[i + 1];
  }
  return parts;
}

std::vector<double> crossings_at_height(const PaperArea& area, double y_mm) {
  std::vector<double> crossings;
  for_each_edge(area, [&](PaperPoint a, PaperPoint b) {
    if ((a.y_mm <= y_mm) == (b.y_mm <= y_mm)) return;
    crossings.push_back(a.x_mm + (y_mm - a.y_mm) / (b.y_mm - a.y_mm) * (b.x_mm - a.x_mm));
  });
  std::sort(crossings.begin(), crossings.end());
  return crossings;
}

bool contains(const PaperArea& area, PaperPoint point) {
  const std::vector<double> crossings = crossings_at_height(area, point.y_mm);
  const auto left_of =
      std::count_if(crossings.begin(), crossings.end(), [&](double x) { return x <= point.x_mm; });
  return left_of % 2 == 1;
}

bool contains(const PaperArea& area, const PaperBox& box) {
  if (!contains(area, middle(box))) return false;
  bool crossed = false;
  for_each_edge(area, [&](PaperPoint a, PaperPoint b) {
    crossed = crossed || clipped(PaperSegment{a, b}, box).has_value();
  });
  return !crossed;
}

std::optional<PaperBox> bounds(const PaperArea& area) {
  std::optional<PaperBox> box;
  for (const PaperLine& ring : area) {
    for (const PaperPoint& p : ring) {
      if (!box) box = PaperBox{p.x_mm, p.y_mm, p.x_mm, p.y_mm};
      box = PaperBox{std::min(box->left_mm, p.x_mm), std::min(box->top_mm, p.y_mm),
                     std::max(box->right_mm, p.x_mm), std::max(box->bottom_mm, p.y_mm)};
    }
  }
  return box;
}

double area_mm2(const PaperArea& area) {
  double twice = 0;
  for_each_edge(area,
                [&](PaperPoint a, PaperPoint b) { twice += a.x_mm * b.y_mm - b.x_mm * a.y_mm; });
  return std::abs(twice) / 2;
}

double distance_to_edge_mm(const PaperArea& area, PaperPoint point) {
  double least = std::numeric_limits<double>::max();
  for_each_edge(area, [&](PaperPoint a, PaperPoint b) {
    least = std::min(least, distance_to_segment_mm(point, a, b));
  });
  return least;
}

std::optional<PaperPoint> visible_middle(const PaperArea& area, const PaperBox& box) {
  constexpr int kSteps = 24;
  constexpr double kLeastRoom = 1;  // mm to the nearest edge
  const auto whole = bounds(area);
  if (!whole) return std::nullopt;
  const PaperBox seen = intersection(*whole, box);
  if (seen.width_mm() <= 0 || seen.height_mm() <= 0) return std::nullopt;
  std::optional<PaperPoint> best;
  double best_room = kLeastRoom;
  for (int row = 1; row < kSteps; ++row) {
    for (int column = 1; column < kSteps; ++column) {
      const PaperPoint at{seen.left_mm + seen.width_mm() * column / kSteps,
                          seen.top_mm + seen.height_mm() * row / kSteps};
      if (!contains(area, at)) continue;
      const double room =
          std::min({distance_to_edge_mm(area, at), at.x_mm - box.left_mm, box.right_mm - at.x_mm,
                    at.y_mm - box.top_mm, box.bottom_mm - at.y_mm});
      if (room > best_room + 1e-9) {
        best_room = room;
        best = at;
      }
    }
  }
  return best;
}

}  // namespace sweepwright::formats
