#include "grid/cover.hpp"

#include <algorithm>
#include <cmath>

namespace sweepwright::grid {
namespace {

__extension__ using Int128 = __int128;

/// Where a side crosses a parallel, rounded down and up to units (equal when it is a whole number).
struct Crossing {
  Ticks down;
  Ticks up;
};

Crossing crossing_at(const Side& side, Ticks y) {
  const Ticks rise = side.high_y - side.low_y;
  const Int128 product = Int128{side.high_x - side.low_x} * (y - side.low_y);
  const Ticks quotient = static_cast<Ticks>(product / rise);
  const Ticks rest = static_cast<Ticks>(product - Int128{quotient} * rise);
  return {side.low_x + quotient - (rest < 0 ? 1 : 0), side.low_x + quotient + (rest > 0 ? 1 : 0)};
}

template <typename ToX, typename ToY>
std::vector<Side> sides_of(const FlatRegion& region, ToX to_x, ToY to_y) {
  std::vector<Side> sides;
  const auto add = [&](const FlatRing& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const FlatPoint& to = ring[(i + 1) % ring.size()];
      Side side{to_x(ring[i].x), to_y(ring[i].y), to_x(to.x), to_y(to.y)};
      if (side.low_y > side.high_y) {
        std::swap(side.low_x, side.high_x);
        std::swap(side.low_y, side.high_y);
      }
      sides.push_back(side);
    }
  };
  for (const FlatPolygon& polygon : region) {
    add(polygon.outer);
    for (const FlatRing& hole : polygon.holes) add(hole);
  }
  return sides;
}

/// Adds the columns whose open cells in the row from `bottom` to `top` the side passes through.
void add_touched(const Side& side, Ticks bottom, Ticks top, Ticks size, std::vector<Span>& spans) {
  Ticks least = std::min(side.low_x, side.high_x);
  Ticks most = std::max(side.low_x, side.high_x);
  if (side.low_y < bottom) {
    const Crossing cut = crossing_at(side, bottom);
    if (side.low_x < side.high_x) least = cut.down;
    if (side.low_x > side.high_x) most = cut.up;
  }
  if (side.high_y > top) {
    const Crossing cut = crossing_at(side, top);
    if (side.low_x < side.high_x) most = cut.up;
    if (side.low_x > side.high_x) least = cut.down;
  }
  const Span span{static_cast<int>(floor_div(least, size)),
                  static_cast<int>(ceil_div(most, size)) - 1};
  if (span.first <= span.last) spans.push_back(span);  // empty: the side runs along a column's edge
}

/// Adds the columns whose centres at latitude `y` lie inside.
void add_inside(const std::vector<Side>& sides, Ticks y, Ticks size, std::vector<int>& turns,
                std::vector<Span>& spans) {
  turns.clear();
  for (const Side& side : sides) {
    if (side.low_y <= y && y < side.high_y) {
      turns.push_back(static_cast<int>(floor_div(crossing_at(side, y).down - size / 2, size)) + 1);
    }
  }
  std::sort(turns.begin(), turns.end());
  for (std::size_t i = 1; i < turns.size(); i += 2) {
    if (turns[i - 1] < turns[i]) spans.push_back({turns[i - 1], turns[i] - 1});
  }
}

/// Sorts spans and joins those that overlap or touch.
void join(std::vector<Span>& spans) {
  std::sort(spans.begin(), spans.end(), [](Span a, Span b) { return a.first < b.first; });
  std::size_t kept = 0;
  for (const Span& span : spans) {
    if (kept > 0 && span.first <= spans[kept - 1].last + 1) {
      spans[kept - 1].last = std::max(spans[kept - 1].last, span.last);
    } else {
      spans[kept++] = span;
    }
  }
  spans.resize(kept);
}

}  // namespace

std::vector<Side> degree_sides(const FlatRegion& region) {
  return sides_of(
      region, [](double x) { return to_ticks(x, 180); }, [](double y) { return to_ticks(y, 90); });
}

std::vector<Side> metre_sides(const FlatRegion& region) {
  const auto whole = [](double metres) {
    return static_cast<Ticks>(std::llround(metres * kMicrometresPerMetre));
  };
  return sides_of(region, whole, whole);
}

// A cell that no side passes through lies wholly inside or outside, and its centre tells which; a
// cell that a side passes through holds ground on both sides of it.
void cover(std::vector<Side> waiting, Ticks size, Selection selection, const RowSink& sink) {
  // The next side to reach, going south, is the last of the list.
  std::sort(waiting.begin(), waiting.end(),
            [](const Side& a, const Side& b) { return a.high_y < b.high_y; });

  std::vector<Side> active;
  std::vector<Span> spans;
  std::vector<int> turns;
  Ticks row = 0;
  while (!active.empty() || !waiting.empty()) {
    if (active.empty()) row = ceil_div(waiting.back().high_y, size) - 1;
    const Ticks bottom = row * size;
    const Ticks top = bottom + size;
    while (!waiting.empty() && waiting.back().high_y > bottom) {
      active.push_back(waiting.back());
      waiting.pop_back();
    }
    std::erase_if(active, [top](const Side& side) { return side.low_y >= top; });

    spans.clear();
    add_inside(active, bottom + size / 2, size, turns, spans);
    if (selection == Selection::touching) {
      for (const Side& side : active) add_touched(side, bottom, top, size, spans);
    }
    join(spans);
    if (!spans.empty()) sink(static_cast<int>(row), spans);

    std::erase_if(active, [bottom](const Side& side) { return side.low_y >= bottom; });
    --row;
  }
}

void cover(const LatLonBox& box, int size_steps, Selection selection, const RowSink& sink) {
  const Ticks size = size_steps * kTicksPerStep;
  const Ticks south = north_ticks(box.south);
  const Ticks north = north_ticks(box.north);
  const Ticks west = east_ticks(box.west);
  const Ticks east = east_ticks(box.west + width(box));
  Ticks bottom = floor_div(south, size);
  Ticks top = ceil_div(north, size) - 1;
  Ticks first = floor_div(west, size);
  Ticks last = ceil_div(east, size) - 1;
  if (selection == Selection::centre_inside) {
    bottom = ceil_div(south - size / 2, size);
    top = ceil_div(north - size / 2, size) - 1;
    first = floor_div(west - size / 2, size) + 1;
    last = floor_div(east - size / 2, size);
  }
  last = std::min(last, first + kStepsAround / size_steps - 1);  // once round is enough
  if (first > last) return;
  const std::vector<Span> spans{{static_cast<int>(first), static_cast<int>(last)}};
  for (Ticks row = top; row >= bottom; --row) sink(static_cast<int>(row), spans);
}

}  // namespace sweepwright::grid
