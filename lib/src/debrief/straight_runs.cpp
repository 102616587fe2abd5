#include "debrief/straight_runs.hpp"

namespace sweepwright::debrief {
namespace {

/// The directions in which a run may end, as slopes from that of its first piece: those that pass
/// all places on the way within the tolerance.
class Cone {
 public:
  Cone(const CellPiece& first, double tolerance)
      : from_(first.from), along_(first.along), tolerance_(tolerance) {
    pass(first.to);
  }

  /// True when the run may end there: further on than before, and in the cone.
  bool takes(CellPoint place) const {
    const CellPoint seen = from_first(place);
    return seen.x > reached_ && seen.y >= low_ * seen.x && seen.y <= high_ * seen.x;
  }

  void pass(CellPoint place) {
    const CellPoint seen = from_first(place);
    reached_ = seen.x;
    low_ = std::max(low_, (seen.y - tolerance_) / seen.x);
    high_ = std::min(high_, (seen.y + tolerance_) / seen.x);
  }

 private:
  /// Along the first piece, and to its left.
  CellPoint from_first(CellPoint place) const {
    const double x = place.x - from_.x;
    const double y = place.y - from_.y;
    return {x * along_.x + y * along_.y, y * along_.x - x * along_.y};
  }

  CellPoint from_;
  CellPoint along_;
  double tolerance_;
  double reached_ = 0;
  double low_ = -0.5;
  double high_ = 0.5;
};

void stretch(CellPiece& run, const CellPiece& piece) {
  run.to = piece.to;
  const double x = run.to.x - run.from.x;
  const double y = run.to.y - run.from.y;
  run.length = std::sqrt(x * x + y * y);
  run.along = {x / run.length, y / run.length};
  run.goes_on = piece.goes_on;
}

}  // namespace

std::vector<CellPiece> StraightRuns::of(std::span<const CellPiece> pieces) {
  std::vector<CellPiece> runs;
  for (std::size_t i = 0; i < pieces.size();) {
    CellPiece run = pieces[i];
    run.along_before = along_before_;
    Cone cone(run, tolerance_);
    std::size_t last = i;
    for (++i; i < pieces.size(); last = i++) {
      const CellPiece& next = pieces[i];
      if (!next.joined || next.half_width != run.half_width || !cone.takes(next.to)) break;
      cone.pass(next.to);
    }
    stretch(run, pieces[last]);
    along_before_ = run.along;
    runs.push_back(run);
  }
  return runs;
}

}  // namespace sweepwright::debrief
