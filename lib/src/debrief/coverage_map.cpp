#include "sweepwright/debrief/coverage_map.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "debrief/cell_piece.hpp"
#include "debrief/detection_integral.hpp"
#include "debrief/pass_raster.hpp"
#include "debrief/straight_runs.hpp"
#include "debrief/swept_raster.hpp"
#include "debrief/tasks.hpp"
#include "sweepwright/base/error.hpp"
#include "sweepwright/position/geodesic.hpp"

namespace sweepwright::debrief {
namespace {

constexpr double kRunTolerance = 0.02;      // of a cell
constexpr std::size_t kBatch = 8192;        // pieces
constexpr std::ptrdiff_t kLeastRows = 16;   // of one task
constexpr std::size_t kTasksOfAThread = 4;  // so that none waits long for the last
constexpr Length kShortPiece = Length::kilometres(1);

bool same(PlanePoint a, PlanePoint b) {
  return a.right == b.right && a.up == b.up;
}

}  // namespace

double pod(const CoverageMap& map, std::size_t cell, sweep::DetectionLaw law) {
  switch (law) {
    case sweep::DetectionLaw::inverse_cube:
      return -std::expm1(-map.potential[cell]);
    case sweep::DetectionLaw::definite_range:
      return static_cast<double>(map.swept_share[cell]);
    case sweep::DetectionLaw::exponential:
      break;
  }
  return -std::expm1(-map.effort_m2[cell] / map.frame.cell_area().square_metres());
}

std::optional<Length> nearest(const CoverageMap& map, std::size_t cell) {
  const auto metres = static_cast<double>(map.nearest_m[cell]);
  return std::isfinite(metres) ? std::optional(Length::metres(metres)) : std::nullopt;
}

class CoverageAccumulator::Batch {
 public:
  Batch(CoverageFrame frame, unsigned threads, CoverageParts parts)
      : frame_(std::move(frame)),
        threads_(std::max(threads, 1U)),
        parts_(parts),
        passes_(frame_.columns, parts.passes ? frame_.rows : 0),
        swept_(frame_.columns, parts.swept ? frame_.cells() : 0),
        detection_(parts.detection ? frame_.columns : 1, parts.detection ? frame_.rows : 1) {}

  void add(const SweptPiece& piece) {
    // A piece usually begins where the last one ended.
    const bool known = last_end_ && *last_end_ == piece.from;
    const bool from_in_reach = known ? last_in_reach_ : in_reach(piece.from);
    const bool to_in_reach = in_reach(piece.to);
    if (from_in_reach && to_in_reach) {
      const PlanePoint from = known ? last_laid_ : frame_.plane.to_plane(piece.from);
      last_laid_ = frame_.plane.to_plane(piece.to);
      add({from, last_laid_, piece.sweep_width});
      last_end_ = piece.to;
      last_in_reach_ = true;
      return;
    }
    last_end_.reset();
    if (!from_in_reach && !to_in_reach && keeps_away(piece)) return;
    if (geodesic(piece.from, piece.to).length <= kShortPiece) return;
    const GeodesicLine line = geodesic(piece.from, piece.to);
    const Position half = travel(piece.from, line.start_track, line.length / 2).position;
    add(SweptPiece{piece.from, half, piece.sweep_width});
    add(SweptPiece{half, piece.to, piece.sweep_width});
  }

  void add(const PlanePiece& piece) {
    const bool joined = laid_end_ && same(*laid_end_, piece.from);
    const CellPoint from = joined ? pieces_.back().to : to_cells(piece.from);
    const CellPoint to = to_cells(piece.to);
    const double length = std::sqrt(square(to.x - from.x) + square(to.y - from.y));
    const double half_width = piece.sweep_width / frame_.cell / 2;
    if (!(length > 0) || !(half_width > 0)) return;
    CellPiece laid{.from = from,
                   .to = to,
                   .along = {(to.x - from.x) / length, (to.y - from.y) / length},
                   .along_before = {},
                   .length = length,
                   .half_width = half_width};
    if (joined) {
      CellPiece& before = pieces_.back();
      before.goes_on = true;
      laid.joined = true;
      laid.along_before = before.along;
      laid.half_width_before = before.half_width;
    }
    laid_end_ = piece.to;
    pieces_.push_back(laid);
    // The last one waits: whether the track goes on is known with the next.
    if (pieces_.size() > kBatch) {
      work(std::span(pieces_).first(kBatch));
      pieces_.erase(pieces_.begin(), pieces_.end() - 1);
    }
  }

  CoverageMap map() {
    work(pieces_);
    pieces_.clear();
    laid_end_.reset();
    CoverageMap map{frame_, {}, {}, {}, {}, {}};
    if (parts_.passes) {
      map.passes = passes_.passes();
      const auto metres = static_cast<float>(frame_.cell.metres());
      map.nearest_m = passes_.nearest_squared();
      for (float& cell : map.nearest_m) cell = metres * std::sqrt(cell);
    }
    if (parts_.swept) {
      const double square_metres = frame_.cell_area().square_metres();
      for (std::size_t i = 0; i < frame_.cells(); ++i) {
        map.swept_share.push_back(static_cast<float>(swept_.share(i)));
        map.effort_m2.push_back(swept_.effort[i] * square_metres);
      }
    }
    if (parts_.detection) map.potential = detection_.potential();
    return map;
  }

 private:
  bool in_reach(Position place) const {
    return geodesic(frame_.plane.centre(), place).length <= kCoverageTrackReach;
  }

  /// No place of the piece is nearer than its ends less what it is long.
  bool keeps_away(const SweptPiece& piece) const {
    const Length from = geodesic(frame_.plane.centre(), piece.from).length;
    const Length to = geodesic(frame_.plane.centre(), piece.to).length;
    return (from + to - geodesic(piece.from, piece.to).length) / 2 > kCoverageTrackReach;
  }

  CellPoint to_cells(PlanePoint point) const {
    return {(point.right - frame_.corner.right) / frame_.cell,
            (point.up - frame_.corner.up) / frame_.cell};
  }

  void work(std::span<const CellPiece> pieces) {
    const auto rows = static_cast<std::ptrdiff_t>(frame_.rows);
    const std::size_t wanted = threads_ == 1 ? 1 : threads_ * kTasksOfAThread;
    const std::ptrdiff_t step =
        std::max(kLeastRows, rows / static_cast<std::ptrdiff_t>(wanted) + 1);
    const auto bands = static_cast<std::size_t>((rows + step - 1) / step);
    const std::size_t squares = parts_.detection ? detection_.tasks() : 0;
    const std::vector<CellPiece> runs = parts_.passes ? runs_.of(pieces) : std::vector<CellPiece>();
    run_tasks(threads_, squares + bands, [&](std::size_t task) {
      if (task < squares) return detection_.add(pieces, task);
      const auto first = static_cast<std::ptrdiff_t>(task - squares) * step;
      const IndexRange band{first, std::min(first + step, rows)};
      passes_.add(runs, band);
      if (parts_.swept) swept_.add(pieces, band);
    });
  }

  CoverageFrame frame_;
  unsigned threads_;
  CoverageParts parts_;
  StraightRuns runs_{kRunTolerance};
  PassRaster passes_;
  SweptRaster swept_;
  DetectionIntegral detection_;
  std::vector<CellPiece> pieces_;
  std::optional<PlanePoint> laid_end_;  ///< where the last piece ended, on the plane
  std::optional<Position> last_end_;    ///< the same on the ground
  PlanePoint last_laid_;
  bool last_in_reach_ = false;
};

CoverageAccumulator::CoverageAccumulator(CoverageFrame frame, unsigned threads, CoverageParts parts)
    : batch_(std::make_unique<Batch>(std::move(frame), threads, parts)) {}

CoverageAccumulator::~CoverageAccumulator() = default;

void CoverageAccumulator::add(const SweptPiece& piece) {
  if (!(piece.sweep_width >= Length() && piece.sweep_width <= kCoverageReach)) {
    throw Error(ErrorCode::value,
                fmt::format("a sweep width of {} m, expected 0 to {} km",
                            piece.sweep_width.metres(), kCoverageReach.kilometres()));
  }
  batch_->add(piece);
}

void CoverageAccumulator::add(const PlanePiece& piece) {
  batch_->add(piece);
}

CoverageMap CoverageAccumulator::map() {
  return batch_->map();
}

}  // namespace sweepwright::debrief
