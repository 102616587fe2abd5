// Box: a rectangle on a plane along its axes, in metres; private to the effort room, where millions
// of them are tried.
#pragma once

#include <algorithm>

namespace sweepwright::effort {

struct Box {
  double left = 0;
  double right = 0;
  double low = 0;
  double high = 0;
  double across() const { return right - left; }
  double up() const { return high - low; }
  double area() const { return across() * up(); }
  double long_side() const { return std::max(across(), up()); }
  double short_side() const { return std::min(across(), up()); }
  bool operator==(const Box&) const = default;
};

inline bool overlap(const Box& a, const Box& b) {
  return a.left < b.right && b.left < a.right && a.low < b.high && b.low < a.high;
}

}  // namespace sweepwright::effort
