#include "debrief/cell_outline.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

namespace sweepwright::debrief {
namespace {

/// A corner of cells: column and row of the lines that meet there.
struct Corner {
  std::ptrdiff_t column = 0;
  std::ptrdiff_t row = 0;
  auto operator<=>(const Corner&) const = default;
};

enum Heading : std::size_t { kRight, kUp, kLeft, kDown };

Corner stepped(Corner from, Heading heading) {
  constexpr std::array<std::pair<int, int>, 4> kSteps{{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}};
  return {from.column + kSteps.at(heading).first, from.row + kSteps.at(heading).second};
}

/// Sides with a cell of the hole on their left and none on their right, by the corner where they
/// begin: which of the four headings leave it.
using Sides = std::map<Corner, std::array<bool, 4>>;

Sides sides_of(const CoverageFrame& frame, const std::vector<std::size_t>& cells) {
  const auto holds = [&](std::ptrdiff_t column, std::ptrdiff_t row) {
    if (column < 0 || row < 0 || column >= static_cast<std::ptrdiff_t>(frame.columns)) return false;
    const auto cell =
        static_cast<std::size_t>(row) * frame.columns + static_cast<std::size_t>(column);
    return std::binary_search(cells.begin(), cells.end(), cell);
  };
  Sides sides;
  for (const std::size_t cell : cells) {
    const auto c = static_cast<std::ptrdiff_t>(cell % frame.columns);
    const auto r = static_cast<std::ptrdiff_t>(cell / frame.columns);
    if (!holds(c, r - 1)) sides[{c, r}][kRight] = true;
    if (!holds(c + 1, r)) sides[{c + 1, r}][kUp] = true;
    if (!holds(c, r + 1)) sides[{c + 1, r + 1}][kLeft] = true;
    if (!holds(c - 1, r)) sides[{c, r + 1}][kDown] = true;
  }
  return sides;
}

/// Takes one ring out of the sides. Where two cells meet at a corner only, it turns right, round
/// the ground outside: so no ring meets itself.
std::vector<Corner> take_ring(Sides& sides) {
  const Corner start = sides.begin()->first;
  Corner at = start;
  auto heading = kRight;
  for (const Heading first : {kRight, kUp, kLeft, kDown}) {
    if (sides.begin()->second.at(first)) {
      heading = first;
      break;
    }
  }
  std::vector<Corner> ring;
  Heading before = heading;
  bool begun = false;
  do {
    const auto leaving = sides.find(at);
    if (begun) {
      for (const std::size_t turn : {3U, 0U, 1U}) {  // right, ahead, left
        const auto next = static_cast<Heading>((before + turn) % 4);
        if (leaving->second.at(next)) {
          heading = next;
          break;
        }
      }
    }
    if (!begun || heading != before) ring.push_back(at);
    leaving->second.at(heading) = false;
    if (std::ranges::none_of(leaving->second, [](bool one) { return one; })) sides.erase(leaving);
    at = stepped(at, heading);
    before = heading;
    begun = true;
  } while (at != start);
  return ring;
}

/// Twice the area that the ring runs round; above 0 when counterclockwise.
std::ptrdiff_t turned_area(const std::vector<Corner>& ring) {
  std::ptrdiff_t sum = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Corner& a = ring[i];
    const Corner& b = ring[(i + 1) % ring.size()];
    sum += a.column * b.row - b.column * a.row;
  }
  return sum;
}

}  // namespace

Polygon outline_of_cells(const CoverageFrame& frame, const std::vector<std::size_t>& cells) {
  Sides sides = sides_of(frame, cells);
  Polygon polygon;
  while (!sides.empty()) {
    const std::vector<Corner> ring = take_ring(sides);
    Ring ground;
    for (const Corner& corner : ring) {
      ground.push_back(frame.plane.to_position(
          {frame.corner.right + frame.cell * static_cast<double>(corner.column),
           frame.corner.up + frame.cell * static_cast<double>(corner.row)}));
    }
    if (turned_area(ring) > 0) {
      polygon.outer = std::move(ground);
    } else {
      polygon.holes.push_back(std::move(ground));
    }
  }
  return polygon;
}

}  // namespace sweepwright::debrief
