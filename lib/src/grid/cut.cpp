// Cutting polygons along a line.
//
// The outline falls into chains that lie on the kept side. Sorted along the line, the chains' ends
// alternate: where one leaves the kept side, the next one enters it, and the line between them is
// the new edge.
#include <algorithm>
#include <utility>

#include "grid/flat.hpp"

namespace sweepwright::grid {
namespace {

// All four cuts are one: the polygon is turned so that the kept side is x < at. Turning (unlike
// mirroring) keeps counterclockwise rings counterclockwise.
FlatPoint turned(FlatPoint p, Keep side) {
  switch (side) {
    case Keep::west:
      return p;
    case Keep::east:
      return {-p.x, -p.y};
    case Keep::south:
      return {p.y, -p.x};
    case Keep::north:
      return {-p.y, p.x};
  }
  return p;
}

FlatPoint turned_back(FlatPoint p, Keep side) {
  switch (side) {
    case Keep::west:
      return p;
    case Keep::east:
      return {-p.x, -p.y};
    case Keep::south:
      return {-p.y, p.x};
    case Keep::north:
      return {p.y, -p.x};
  }
  return p;
}

FlatRing turned(const FlatRing& ring, Keep side) {
  FlatRing out;
  out.reserve(ring.size());
  for (const FlatPoint& p : ring) out.push_back(turned(p, side));
  return out;
}

FlatRing turned_back(const FlatRing& ring, Keep side) {
  FlatRing out;
  out.reserve(ring.size());
  for (const FlatPoint& p : ring) {
    const FlatPoint q = turned_back(p, side);
    if (out.empty() || !(out.back() == q)) out.push_back(q);
  }
  while (out.size() > 1 && out.front() == out.back()) out.pop_back();
  return out;
}

/// One end of a chain on the line.
struct End {
  double y;
  bool leaves;  ///< the outline leaves the kept side here, going along the ring
  std::size_t chain;
};

/// Cuts turned polygons at x = at, keeping what lies below it.
class Cutter {
 public:
  explicit Cutter(double at) : at_(at) {}

  enum class Fate { kept, dropped, cut };
  /// Takes a ring that the line cuts. Does nothing with one that is wholly on one side.
  Fate add(const FlatRing& ring) {
    std::size_t kept = 0;
    for (const FlatPoint& p : ring) kept += p.x < at_ ? 1 : 0;
    if (kept == 0) return Fate::dropped;
    if (kept == ring.size()) return Fate::kept;
    // Start on the far side, so that every chain is whole.
    std::size_t start = 0;
    while (ring[start].x < at_) ++start;
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const FlatPoint a = ring[(start + i) % ring.size()];
      const FlatPoint b = ring[(start + i + 1) % ring.size()];
      const bool a_kept = a.x < at_;
      const bool b_kept = b.x < at_;
      if (!a_kept && b_kept) {
        const FlatPoint entry = on_line(b, a);
        ends_.push_back({entry.y, false, chains_.size()});
        chains_.push_back({entry});
      }
      if (b_kept) chains_.back().push_back(b);
      if (a_kept && !b_kept) {
        const FlatPoint exit = on_line(a, b);
        ends_.push_back({exit.y, true, chains_.size() - 1});
        chains_.back().push_back(exit);
      }
    }
    return Fate::cut;
  }

  /// The rings that the chains form with the line.
  std::vector<FlatRing> rings() {
    std::sort(ends_.begin(), ends_.end(), [](const End& a, const End& b) { return a.y < b.y; });
    std::vector<std::size_t> next(chains_.size());
    for (std::size_t i = 0; i + 1 < ends_.size(); i += 2) {
      // Ends at the same height (or swapped by rounding) come in the order that alternates.
      put_first(i, true);
      put_first(i + 1, false);
      next[ends_[i].chain] = ends_[i + 1].chain;
    }
    std::vector<FlatRing> rings;
    std::vector<bool> used(chains_.size());
    for (std::size_t first = 0; first < chains_.size(); ++first) {
      FlatRing ring;
      for (std::size_t chain = first; !used[chain]; chain = next[chain]) {
        used[chain] = true;
        ring.insert(ring.end(), chains_[chain].begin(), chains_[chain].end());
      }
      if (!ring.empty()) rings.push_back(std::move(ring));
    }
    return rings;
  }

 private:
  /// Where the edge from a kept corner to one beyond meets the line.
  FlatPoint on_line(FlatPoint kept, FlatPoint beyond) const {
    if (beyond.x == at_) return beyond;
    return {at_, kept.y + (beyond.y - kept.y) * ((at_ - kept.x) / (beyond.x - kept.x))};
  }

  void put_first(std::size_t i, bool leaves) {
    std::size_t found = i;
    while (found < ends_.size() && ends_[found].leaves != leaves) ++found;
    if (found < ends_.size()) {
      std::rotate(ends_.begin() + static_cast<std::ptrdiff_t>(i),
                  ends_.begin() + static_cast<std::ptrdiff_t>(found),
                  ends_.begin() + static_cast<std::ptrdiff_t>(found) + 1);
    }
  }

  double at_;
  std::vector<FlatRing> chains_;
  std::vector<End> ends_;
};

void cut_polygon(const FlatPolygon& polygon, Keep side, double at, FlatRegion& out) {
  const double turned_at =
      side == Keep::west || side == Keep::south ? at : -at;  // the line, after turning
  Cutter cutter(turned_at);
  const Cutter::Fate fate = cutter.add(turned(polygon.outer, side));
  if (fate == Cutter::Fate::dropped) return;
  std::vector<FlatRing> whole_holes;
  for (const FlatRing& hole : polygon.holes) {
    if (cutter.add(turned(hole, side)) == Cutter::Fate::kept) whole_holes.push_back(hole);
  }
  if (fate == Cutter::Fate::kept) {
    out.push_back({polygon.outer, whole_holes});
    return;
  }
  const std::size_t first = out.size();
  for (const FlatRing& ring : cutter.rings()) {
    FlatRing back = turned_back(ring, side);
    if (back.size() >= 3) out.push_back({std::move(back), {}});
  }
  for (const FlatRing& hole : whole_holes) {
    for (std::size_t i = first; i < out.size(); ++i) {
      if (i + 1 == out.size() || inside({{out[i].outer, {}}}, hole.front())) {
        out[i].holes.push_back(hole);
        break;
      }
    }
  }
}

}  // namespace

FlatRegion cut(const FlatRegion& region, Keep side, double at) {
  FlatRegion out;
  for (const FlatPolygon& polygon : region) cut_polygon(polygon, side, at, out);
  return out;
}

FlatRegion cut(const FlatRegion& region, const FlatBounds& box) {
  const FlatBounds now = bounds(region);
  if (now.low.x >= box.high.x || now.high.x <= box.low.x || now.low.y >= box.high.y ||
      now.high.y <= box.low.y) {
    return {};
  }
  FlatRegion out = region;
  if (now.low.y < box.low.y) out = cut(out, Keep::north, box.low.y);
  if (now.high.y > box.high.y) out = cut(out, Keep::south, box.high.y);
  if (now.low.x < box.low.x) out = cut(out, Keep::east, box.low.x);
  if (now.high.x > box.high.x) out = cut(out, Keep::west, box.high.x);
  return out;
}

}  // namespace sweepwright::grid
