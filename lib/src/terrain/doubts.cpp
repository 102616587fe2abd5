#include "sweepwright/terrain/doubts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sweepwright/position/position_text.hpp"
#include "terrain/layer.hpp"

namespace sweepwright::terrain {
namespace {

constexpr double kHighest = 8900;
constexpr double kLowest = -450;
constexpr double kSteepStep = 60;  // finer models show cliffs as they are
constexpr double kSteepShare = 0.02;
constexpr std::size_t kFewPieces = 1000;  // too few to judge by
constexpr double kJump = 500;
constexpr double kJumpSlope = 5.67;  // tangent of 80 degrees
constexpr double kDisagreement = 30;

struct Steepness {
  std::size_t pieces = 0;
  std::size_t steep = 0;
  double jump = 0;
  int jump_row = 0;
  int jump_column = 0;
};

class TileDoubts {
 public:
  explicit TileDoubts(const ElevationTile& tile)
      : tile_(tile), frame_(tile.lattice, tile.columns) {}

  std::vector<std::string> find() {
    heights();
    slopes();
    return std::move(found_);
  }

 private:
  void add(const std::string& sentence) {
    found_.push_back(fmt::format("{}: {}", tile_.source, sentence));
  }

  void heights() {
    float least = 0;
    float most = 0;
    for (const float height : tile_.heights_m) {
      least = std::min(least, height);
      most = std::max(most, height);
    }
    if (static_cast<double>(most) > kHighest) {
      add(fmt::format(
          "the highest ground is {:.0f} m above sea level, higher than any on Earth: are "
          "the heights in feet?",
          most));
    }
    if (static_cast<double>(least) < kLowest) {
      add(
          fmt::format("the lowest ground is {:.0f} m, below any dry land: is that number a gap, or "
                      "is the sea's floor in the model?",
                      least));
    }
  }

  void slopes() {
    Steepness all;
    bool judge_steepness = true;
    for (int row = 0; row < tile_.rows; ++row) {
      const Metric metric =
          frame_.least_metric({0, 0, static_cast<double>(row), static_cast<double>(row)});
      judge_steepness = judge_steepness && metric.metres_per_v >= kSteepStep;
      for (int column = 0; column < tile_.columns; ++column) {
        if (column + 1 < tile_.columns) take(all, row, column, 0, 1, metric.metres_per_u);
        if (row + 1 < tile_.rows) take(all, row, column, 1, 0, metric.metres_per_v);
      }
    }
    if (judge_steepness && all.pieces >= kFewPieces &&
        static_cast<double>(all.steep) > kSteepShare * static_cast<double>(all.pieces)) {
      add(
          fmt::format("{:.1f} % of the ground is steeper than 45 degrees, more than mountains are: "
                      "are the heights in feet?",
                      100.0 * static_cast<double>(all.steep) / static_cast<double>(all.pieces)));
    }
    if (all.jump > 0) {
      const Position place = frame_.to_position(
          {static_cast<double>(all.jump_column), static_cast<double>(all.jump_row)});
      add(fmt::format(
          "heights jump by {:.0f} m from one post to the next near {}: is one of them a "
          "gap that is marked by a number?",
          all.jump, format_position(place)));
    }
  }

  /// `distance`: metres between a post and the one `down` and `right` of it.
  void take(Steepness& all, int row, int column, int down, int right, double distance) const {
    if (!(distance > 1)) return;  // at a pole
    const double rise =
        std::abs(static_cast<double>(tile_.heights_m[tile_.index(row + down, column + right)]) -
                 static_cast<double>(tile_.heights_m[tile_.index(row, column)]));
    if (std::isnan(rise)) return;
    ++all.pieces;
    if (rise > distance) ++all.steep;
    if (rise >= kJump && rise > kJumpSlope * distance && rise > all.jump) {
      all.jump = rise;
      all.jump_row = row;
      all.jump_column = column;
    }
  }

  const ElevationTile& tile_;
  Frame frame_;
  std::vector<std::string> found_;
};

/// Differences of two tiles on the posts that both have.
std::vector<double> differences(const PlacedTile& a, const PlacedTile& b) {
  std::vector<double> all;
  const long first_row = std::max(a.row, b.row);
  const long last_row = std::min(a.row + a.tile->rows, b.row + b.tile->rows) - 1;
  const long first_column = std::max(a.column, b.column);
  const long last_column = std::min(a.column + a.tile->columns, b.column + b.tile->columns) - 1;
  for (long row = first_row; row <= last_row; ++row) {
    for (long column = first_column; column <= last_column; ++column) {
      const auto height = [&](const PlacedTile& placed) {
        return static_cast<double>(placed.tile->heights_m[placed.tile->index(
            static_cast<int>(row - placed.row), static_cast<int>(column - placed.column))]);
      };
      const double difference = std::abs(height(a) - height(b));
      if (!std::isnan(difference)) all.push_back(difference);
    }
  }
  return all;
}

}  // namespace

std::vector<std::string> doubts(const ElevationTile& tile) {
  return TileDoubts(tile).find();
}

std::vector<std::string> doubts(const ElevationModel& model) {
  std::vector<std::string> all;
  for (const ElevationTile& tile : model.tiles()) {
    for (std::string& doubt : doubts(tile)) all.push_back(std::move(doubt));
  }
  for (const Layer& layer : model.layers()) {
    for (std::size_t i = 0; i < layer.tiles.size(); ++i) {
      for (std::size_t j = i + 1; j < layer.tiles.size(); ++j) {
        std::vector<double> apart = differences(layer.tiles[i], layer.tiles[j]);
        if (apart.empty()) continue;
        const auto middle = apart.begin() + static_cast<std::ptrdiff_t>(apart.size() / 2);
        std::nth_element(apart.begin(), middle, apart.end());
        if (*middle <= kDisagreement) continue;
        all.push_back(fmt::format(
            "{} and {} differ by {:.0f} m on the posts that they share: is one of them in feet?",
            layer.tiles[i].tile->source, layer.tiles[j].tile->source, *middle));
      }
    }
  }
  return all;
}

}  // namespace sweepwright::terrain
