// Tracks flown over a raster, for tests of coverage.
#pragma once

#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "sweepwright/debrief/coverage_map.hpp"

namespace sweepwright::test {

inline debrief::CoverageFrame square_frame(Length side, Length cell) {
  const auto across = static_cast<std::size_t>(std::lround(side / cell));
  return {LocalPlane(Position::at(Angle::degrees(45), Angle::degrees(7))),
          {-side / 2, -side / 2},
          cell,
          across,
          across};
}

inline PlanePoint metres(double right, double up) {
  return {Length::metres(right), Length::metres(up)};
}

inline std::vector<debrief::PlanePiece> pieces_of(const std::vector<PlanePoint>& track,
                                                  Length sweep_width) {
  std::vector<debrief::PlanePiece> pieces;
  for (std::size_t i = 1; i < track.size(); ++i) {
    pieces.push_back({track[i - 1], track[i], sweep_width});
  }
  return pieces;
}

/// The same numbers on every machine, which the distributions of the standard library are not.
class Dice {
 public:
  explicit Dice(unsigned seed) : random_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(random_()) / 4294967296.0;
  }

 private:
  std::mt19937 random_;
};

/// A track that wanders about a square, now gently and now sharply turning.
inline std::vector<PlanePoint> wandering(Dice& dice, Length side, int places, Length step) {
  const double half = side.metres() / 2;
  double x = dice.between(-half, half);
  double y = dice.between(-half, half);
  double heading = dice.between(0, 2 * std::numbers::pi);
  std::vector<PlanePoint> track;
  for (int i = 0; i < places; ++i) {
    track.push_back(metres(x, y));
    heading += i % 17 == 0 ? dice.between(-3, 3) : dice.between(-0.1, 0.1);
    if (std::abs(x) > half || std::abs(y) > half) heading = std::atan2(-x, -y);
    const double length = step.metres() * dice.between(0.2, 1.8);
    x += length * std::sin(heading);
    y += length * std::cos(heading);
  }
  return track;
}

inline debrief::CoverageMap coverage_of(const debrief::CoverageFrame& frame,
                                        const std::vector<debrief::PlanePiece>& pieces,
                                        unsigned threads = 1) {
  debrief::CoverageAccumulator coverage(frame, threads);
  for (const debrief::PlanePiece& piece : pieces) coverage.add(piece);
  return coverage.map();
}

}  // namespace sweepwright::test
