#include "effort/improve.hpp"

#include <algorithm>
#include <array>

namespace sweepwright::effort {
namespace {

/// Gains under this are rounding.
constexpr double kLeastGain = 1e-9;

/// How a box changes with a step, and which side of a neighbour gives way when the box runs into
/// it.
struct Move {
  double left;
  double right;
  double low;
  double high;
};

constexpr std::array<Move, 12> kMoves = {{
    {-1, 0, 0, 0},
    {1, 0, 0, 0},
    {0, 1, 0, 0},
    {0, -1, 0, 0},
    {0, 0, -1, 0},
    {0, 0, 1, 0},
    {0, 0, 0, 1},
    {0, 0, 0, -1},
    {1, 1, 0, 0},
    {-1, -1, 0, 0},
    {0, 0, 1, 1},
    {0, 0, -1, -1},
}};

Box moved(const Box& box, const Move& move, double step) {
  return {box.left + move.left * step, box.right + move.right * step, box.low + move.low * step,
          box.high + move.high * step};
}

/// The neighbour's box without the ground that the moved box has taken.
Box trimmed(Box neighbour, const Box& taker, const Move& move) {
  if (move.right > 0) neighbour.left = taker.right;
  if (move.left < 0) neighbour.right = taker.left;
  if (move.high > 0) neighbour.low = taker.high;
  if (move.low < 0) neighbour.high = taker.low;
  return neighbour;
}

class Improver {
 public:
  Improver(const PlaneBelief& belief, std::span<const Crew> crews, Layout layout)
      : belief_(belief), crews_(crews), layout_(std::move(layout)) {
    for (std::size_t i = 0; i < crews_.size(); ++i) found_.push_back(found(i, layout_[i]));
  }

  Layout run() {
    const Box& bounds = belief_.bounds();
    const double span = bounds.long_side();
    constexpr double kFirstStep = 1.0 / 8;
    constexpr double kLeastStep = 1.0 / 2048;
    constexpr int kMostRounds = 200;  // rarely more than 20
    for (double step = kFirstStep; step >= kLeastStep; step /= 2) {
      for (int round = 0; round < kMostRounds; ++round) {
        if (!improve_once(step * span)) break;
      }
    }
    return layout_;
  }

 private:
  double found(std::size_t crew, const Box& box) const { return worth(belief_, crews_[crew], box); }

  bool improve_once(double step) {
    bool better = exchange_crews();
    for (std::size_t crew = 0; crew < crews_.size(); ++crew) {
      for (const Move& move : kMoves) better |= try_move(crew, move, step);
    }
    return better;
  }

  bool try_move(std::size_t crew, const Move& move, double step) {
    const Box box = moved(layout_[crew], move, step);
    if (box.across() <= 0 || box.up() <= 0 || !can_fly(crews_[crew], box)) return false;
    changed_.assign(1, {crew, box, found(crew, box)});
    double gain = changed_[0].found - found_[crew];
    for (std::size_t other = 0; other < crews_.size(); ++other) {
      if (other == crew || !overlap(box, layout_[other])) continue;
      const Box left = trimmed(layout_[other], box, move);
      if (left.across() <= 0 || left.up() <= 0 || !can_fly(crews_[other], left)) return false;
      changed_.push_back({other, left, found(other, left)});
      gain += changed_.back().found - found_[other];
    }
    if (gain <= kLeastGain) return false;
    for (const Change& change : changed_) {
      layout_[change.crew] = change.box;
      found_[change.crew] = change.found;
    }
    return true;
  }

  bool exchange_crews() {
    bool better = false;
    for (std::size_t a = 0; a < crews_.size(); ++a) {
      for (std::size_t b = a + 1; b < crews_.size(); ++b) {
        if (!can_fly(crews_[a], layout_[b]) || !can_fly(crews_[b], layout_[a])) continue;
        const double found_a = found(a, layout_[b]);
        const double found_b = found(b, layout_[a]);
        if (found_a + found_b <= found_[a] + found_[b] + kLeastGain) continue;
        std::swap(layout_[a], layout_[b]);
        found_[a] = found_a;
        found_[b] = found_b;
        better = true;
      }
    }
    return better;
  }

  struct Change {
    std::size_t crew;
    Box box;
    double found;
  };

  const PlaneBelief& belief_;
  std::span<const Crew> crews_;
  Layout layout_;
  std::vector<double> found_;    ///< by each crew
  std::vector<Change> changed_;  ///< by the move that is tried
};

}  // namespace

Layout improved(const PlaneBelief& belief, std::span<const Crew> crews, Layout layout) {
  return Improver(belief, crews, std::move(layout)).run();
}

}  // namespace sweepwright::effort
